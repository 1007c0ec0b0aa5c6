import { DEFAULT_SOAK_DAYS } from '../care/constants';
import type { Plan } from '../care/plan';
import type { EpisodeRows } from '../edges/db/read-episode-rows';

/** What was done, for the time axis: a letter there and its words beside it. */
export interface EpisodeEvent {
  readonly day: number;
  readonly letter: string;
  readonly words: string;
}

const ACTIONS: Readonly<Record<string, readonly [letter: string, words: string]>> = {
  called: ['C', 'called'],
  messaged: ['M', 'message sent'],
  bringInToday: ['B', 'asked to come in today'],
  askClinician: ['Q', 'clinician asked'],
  nothingNeeded: ['N', 'nothing more needed'],
  settled: ['F', 'settled at the follow-up'],
  leftOpen: ['O', 'left open at the follow-up'],
};

/** How an action reads in a table: `actionWords('called')` → 'called'. */
export const actionWords = (action: string): string => ACTIONS[action]?.[1] ?? action;

/** Antibiotic, soaks by the plan, and what staff did, oldest first. */
export function episodeEvents({ antibioticStartedAt, resolutions, messages }: EpisodeRows, plan: Plan, dayOf: (at: Date) => number): EpisodeEvent[] {
  const events = resolutions.map(({ at, action }): EpisodeEvent => ({ day: dayOf(at), letter: ACTIONS[action]?.[0] ?? 'X', words: actionWords(action) }));
  for (const { at } of messages) events.push({ day: dayOf(at), letter: 'M', words: 'message sent' });
  if (antibioticStartedAt) events.push({ day: dayOf(antibioticStartedAt), letter: 'A', words: 'antibiotic started' });
  if (plan.soaksPerDay) events.push({ day: plan.soakDays ?? DEFAULT_SOAK_DAYS, letter: 'S', words: 'soaks end by the plan' });
  // One call is a word on every open finding, and a message may be both: one letter.
  const once = new Map(events.map((event) => [`${event.letter} ${event.day}`, event]));
  return [...once.values()].sort((a, b) => a.day - b.day);
}
