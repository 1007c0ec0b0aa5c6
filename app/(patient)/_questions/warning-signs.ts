import type { Answers } from '../../../lib/care/answers';

/**
 * Degrees Celsius. Fever from 38 on, and a body too cold below 36 together with another sign (SIRS criteria, Bone 1992).
 * The same limits as the clinic's rule for fever has by default; on the phone they hold without waiting for anybody.
 */
const FEVER_C = 38;
const TOO_COLD_C = 36;
/** Until then a numb toe is the injection. */
const ANAESTHETIC_HOURS = 24;

export type WarningSign =
  | 'streaks'
  | 'fever'
  | 'chills'
  | 'confusion'
  | 'tooCold'
  | 'dusky'
  | 'cold'
  | 'boneVisible'
  | 'painOutOfProportion'
  | 'numb'
  | 'bleedingAfterPressure';

/** Signs that stand for themselves as soon as they are reported. */
const ALONE = ['streaks', 'chills', 'confusion', 'dusky', 'cold', 'boneVisible', 'painOutOfProportion', 'bleedingAfterPressure'] as const;

/** Signs that only count beside a low temperature. */
const BESIDE = ['spreadingSeen', 'swelling', 'warmth', 'smell'] as const;

/**
 * What among the answers means "call now". It looks at nothing but the answers, so it works without network.
 * @param answers as given so far; an absent one is not a "no"
 * @param hoursSince hours since the procedure
 */
export function warningSigns(answers: Answers, hoursSince: number): WarningSign[] {
  const found: WarningSign[] = ALONE.filter((sign) => answers[sign] === true);
  const { feverC } = answers;
  if (feverC !== undefined && feverC >= FEVER_C) found.push('fever');
  if (answers.numb === true && hoursSince > ANAESTHETIC_HOURS) found.push('numb');
  const beside = found.length > 0 || BESIDE.some((sign) => answers[sign] === true) || answers.dischargeConsistency === 'thick';
  if (feverC !== undefined && feverC < TOO_COLD_C && beside) found.push('tooCold');
  return found;
}
