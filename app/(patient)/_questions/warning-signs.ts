import type { Answers } from '../../../lib/care/answers';
import { WARNING_LIMITS } from '../../../lib/care/warning-limits';

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
  | 'bleedingAfterPressure'
  | 'bloodRuns';

/** Signs that stand for themselves as soon as they are reported. */
const ALONE = ['streaks', 'chills', 'confusion', 'dusky', 'cold', 'boneVisible', 'painOutOfProportion', 'bleedingAfterPressure', 'bloodRuns'] as const;

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
  if (feverC !== undefined && feverC >= WARNING_LIMITS.feverC) found.push('fever');
  if (answers.numb === true && hoursSince > WARNING_LIMITS.numbHours) found.push('numb');
  const beside = found.length > 0 || BESIDE.some((sign) => answers[sign] === true) || answers.dischargeConsistency === 'thick';
  if (feverC !== undefined && feverC < WARNING_LIMITS.tooColdC && beside) found.push('tooCold');
  return found;
}
