import type { Answers } from '../care/answers';
import type { Entry } from './course';
import type { Visit } from './visits';

type YesOrNo = { [Key in keyof Answers]-?: NonNullable<Answers[Key]> extends boolean ? Key : never }[keyof Answers];

/**
 * Was a question answered with yes at a visit? A question that was not asked is no answer.
 *
 * @param visit as known at the moment
 * @param question name of a yes-or-no question
 * @example answeredYes(visit, 'warmth') // true
 */
export const answeredYes = (visit: Visit, question: YesOrNo): boolean => visit.entries.some(({ answers }) => answers[question] === true);

/**
 * The strongest pain reported at a visit.
 *
 * @param visit as known at the moment
 * @returns 0 … 10, or null where it was not asked
 * @example answeredPain(visit) // 3
 */
export function answeredPain(visit: Visit): number | null {
  let strongest: number | null = null;
  for (const { answers } of visit.entries) if (answers.pain !== undefined) strongest = Math.max(strongest ?? 0, answers.pain);
  return strongest;
}

/**
 * Times of the check-ins of a visit, as evidence.
 *
 * @param visits any
 * @example answeredAt([visit]) // ['2026-03-05T08:00:00.000Z']
 */
export const answeredAt = (visits: readonly Visit[]): string[] => visits.flatMap(({ entries }) => entries.map(({ at }) => at));

const COLOURED: readonly (Answers['dischargeColour'] | undefined)[] = ['yellow', 'green'];
const THICK: readonly (Answers['dischargeConsistency'] | undefined)[] = ['thick', 'creamy', 'opaque', 'milky'];

/**
 * Purulent by the words of NHSN: one colour (green, yellow) and one consistency (thick, creamy, opaque, milky).
 *
 * @param entry one check-in
 * @example answeredPurulent({ answers: { dischargeColour: 'clear', dischargeConsistency: 'thick' } }) // false
 */
export const answeredPurulent = ({ answers }: Pick<Entry, 'answers'>): boolean =>
  COLOURED.includes(answers.dischargeColour) && THICK.includes(answers.dischargeConsistency);

/**
 * Did the dressing come off clean: dry, or no discharge seen, and nothing said against it?
 *
 * @param entry one check-in
 * @returns null where nothing was said about discharge
 * @example answeredClean({ answers: { wetness: 'dry' } }) // true
 */
export function answeredClean({ answers }: Pick<Entry, 'answers'>): boolean | null {
  const { wetness, dischargeColour, dischargeConsistency } = answers;
  if (wetness === undefined && dischargeColour === undefined && dischargeConsistency === undefined) return null;
  const seen = [dischargeColour, dischargeConsistency].some((one) => one !== undefined && one !== 'none');
  return !seen && (wetness === undefined || wetness === 'dry');
}
