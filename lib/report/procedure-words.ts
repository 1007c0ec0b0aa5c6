import type { Plan } from '../care/plan';
import type { Procedure } from '../care/procedure';

export interface Fact {
  readonly name: string;
  readonly words: string;
}

const MATRICECTOMY: Readonly<Record<Procedure['matricectomy'], string>> = {
  none: 'none',
  naoh: 'sodium hydroxide',
  phenol30: 'phenol, 30 s',
  phenol60: 'phenol, 60 s',
  unknown: 'not known',
};
const EDGE: Readonly<Record<NonNullable<Procedure['edge']>, string>> = {
  whole: 'whole curved edge, cut in one line',
  spike: 'a spike was seen',
  torn: 'torn end',
  unknown: 'not known',
};
const IF_IT_FAILS: Readonly<Record<NonNullable<Procedure['ifItFails']>, string>> = {
  partialAgain: 'partial removal again',
  withMatricectomy: 'again, and the matrix treated',
  wholeNail: 'the whole nail removed',
  refer: 'refer to a surgeon',
};
const NOT_RECORDED = 'not recorded';

const yesNo = (seen: boolean | null | undefined, yes: string, no: string): string => (seen === undefined || seen === null ? NOT_RECORDED : seen ? yes : no);

/**
 * What was done and found at the procedure, as a person says it. What nobody recorded is said to be so.
 *
 * @param procedure as recorded on the day
 * @returns names and words, always the same seven in the same order
 * @example procedureWords({ at: '2026-03-01T09:00:00Z', matricectomy: 'naoh', stripMm: 3.5 })[1] // { name: 'Strip removed', words: '3.5 mm' }
 */
export function procedureWords(procedure: Procedure): Fact[] {
  const { treatedSides = [], stripMm, edge, pusSeen, boneFelt, matricectomy, foot, ifItFails } = procedure;
  const side = [foot ? `${foot} big toe` : '', treatedSides.join(' and ')].filter(Boolean).join(', ');
  return [
    { name: 'Side', words: side || NOT_RECORDED },
    { name: 'Strip removed', words: stripMm ? `${stripMm} mm` : NOT_RECORDED },
    { name: 'Edge', words: edge ? EDGE[edge] : NOT_RECORDED },
    { name: 'Pus', words: yesNo(pusSeen, 'seen', 'none seen') },
    { name: 'Bone', words: yesNo(boneFelt, 'felt', 'not felt') },
    { name: 'Matricectomy', words: MATRICECTOMY[matricectomy] },
    { name: 'If it fails', words: ifItFails ? IF_IT_FAILS[ifItFails] : NOT_RECORDED },
  ];
}

/**
 * The plan that was given, in one line.
 * @example planWords({ checkInEveryHours: 24, graceHours: 36, soaksPerDay: 2, soakMinutes: 10, soakDays: 14 }) // 'soaks 2 times a day for 10 min until day 14, check-in every 24 h'
 */
export function planWords({ soaksPerDay, soakMinutes, soakDays, checkInEveryHours }: Plan): string {
  const soaks = soaksPerDay
    ? `soaks ${soaksPerDay === 1 ? 'once' : `${soaksPerDay} times`} a day${soakMinutes ? ` for ${soakMinutes} min` : ''}${soakDays ? ` until day ${soakDays}` : ''}`
    : 'no soaks planned';
  return `${soaks}, check-in every ${checkInEveryHours} h`;
}
