import { answeredPurulent, answeredYes } from './answered';
import { painRise } from './pain-rise';
import type { View } from './view';
import type { Visit } from './visits';

export type Sign = 'newSwelling' | 'warmth' | 'risingPain' | 'purulentDischarge' | 'spreadingSeen';

export const SIGN_WORDS: Readonly<Record<Sign, string>> = {
  newSwelling: 'new swelling',
  warmth: 'warmth',
  risingPain: 'rising pain',
  purulentDischarge: 'thick coloured discharge',
  spreadingSeen: 'the person sees the redness spread',
};

/**
 * Signs besides redness that were reported from a visit on.
 *
 * @param view the moment
 * @param fromHours start of the first visit that counts
 * @returns each sign once, with no claim about those that were not asked
 * @example signsSince(view, 96) // ['warmth']
 */
export function signsSince(view: View, fromHours: number): Sign[] {
  const signs = new Set<Sign>();
  view.visits.forEach((visit, place) => {
    if (visit.startHours < fromHours) return;
    if (answeredYes(visit, 'warmth')) signs.add('warmth');
    if (answeredYes(visit, 'spreadingSeen')) signs.add('spreadingSeen');
    if (visit.entries.some(answeredPurulent)) signs.add('purulentDischarge');
    if (isNewSwelling(view, visit)) signs.add('newSwelling');
    if (painRise(view.visits.slice(0, place + 1), view.limits)) signs.add('risingPain');
  });
  return [...signs];
}

/** Swelling that was there in the first days, and in every answer since, is not new. One "no" in between makes it so. */
function isNewSwelling(view: View, visit: Visit): boolean {
  if (!answeredYes(visit, 'swelling')) return false;
  const earlier = view.visits
    .filter((one) => one.startHours < visit.startHours)
    .flatMap(({ startHours, entries }) => entries.flatMap(({ answers }) => (answers.swelling === undefined ? [] : [{ startHours, yes: answers.swelling }])));
  const fromTheStart = earlier.some(({ startHours }) => startHours <= view.limits['early.hours']);
  return !(fromTheStart && earlier.every(({ yes }) => yes));
}
