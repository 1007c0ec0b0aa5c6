import { LEAST_NOTE_LETTERS, MOST_NOTE_LETTERS, type ReviewRule } from './constants';

/** What becomes of one open finding where a follow-up is closed. */
export const CLOSING_STEPS = ['settled', 'leftOpen'] as const;
export type ClosingStep = (typeof CLOSING_STEPS)[number];

/** A clinician's word on all open findings of one rule. */
export interface ClosingAnswer {
  readonly rule: string;
  readonly step: ClosingStep;
  readonly note: string;
}

export interface EnteredClosing {
  /** What was found at the follow-up, in the clinician's words. */
  readonly found: string;
  readonly answers: readonly ClosingAnswer[];
}

/**
 * What closing a follow-up must record: what was found, in words that a person wrote, and for each rule that is open
 * either how it was settled or what is left open. The program adds no word of its own on how the toe does.
 *
 * @param entered as it came
 * @param open rules that are open now
 * @param nameOf a rule's name for people
 * @returns the answers in the order of `open`, or one sentence naming what is missing
 * @example checkClosing({ found: ' ', answers: [] }, [], String) // { problem: 'What was found at the follow-up? It is kept with the case.' }
 */
export function checkClosing(
  { found, answers }: EnteredClosing,
  open: readonly ReviewRule[],
  nameOf: (rule: string) => string,
): { readonly kept: EnteredClosing } | { readonly problem: string } {
  const notes = [found, ...answers.map(({ note }) => note)].map((text) => text.trim());
  const longest = Math.max(...notes.map(({ length }) => length));
  if (longest > MOST_NOTE_LETTERS) return { problem: `A note has at most ${MOST_NOTE_LETTERS} letters, received ${longest}.` };
  if (found.trim().length < LEAST_NOTE_LETTERS) return { problem: 'What was found at the follow-up? It is kept with the case.' };
  const kept: ClosingAnswer[] = [];
  for (const rule of open) {
    const own = answers.find((answer) => answer.rule === rule);
    if (own === undefined) return { problem: `“${nameOf(rule)}” is open: settled, or left open?` };
    if (own.note.trim().length < LEAST_NOTE_LETTERS) return { problem: `“${nameOf(rule)}”: ${own.step === 'settled' ? 'what settled it?' : 'what is left open, and who looks after it?'}` };
    kept.push({ ...own, note: own.note.trim() });
  }
  return { kept: { found: found.trim(), answers: kept } };
}
