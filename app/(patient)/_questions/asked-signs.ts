import type { PatientState } from '../../../lib/care/patient-contract';
import type { Answers } from '../../../lib/care/answers';

export type TickedSign = 'dusky' | 'cold' | 'numb' | 'boneVisible' | 'proudTissue' | 'cornerTender';

/** When a sign begins to mean something, in hours: after the injection, and once flesh or a nail edge can have grown (common practice). */
const FROM_HOURS: Readonly<Record<TickedSign, number>> = {
  dusky: 0,
  cold: 0,
  boneVisible: 0,
  numb: 24,
  proudTissue: 7 * 24,
  cornerTender: 10 * 24,
};

/** Which signs the last question lists so many hours after the procedure. */
export const askedSigns = (hoursSince: number): TickedSign[] =>
  (Object.keys(FROM_HOURS) as TickedSign[]).filter((sign) => hoursSince >= FROM_HOURS[sign]);

/** From here on pain is strong enough to ask what kind it is. */
const STRONG_PAIN = 7;

/** Follow-up questions that the answers so far, or this person's skin and nerves, call for. */
export function followUps(answers: Answers, askEveryTime: PatientState['askEveryTime']) {
  const always = (what: PatientState['askEveryTime'][number]) => askEveryTime.includes(what);
  const redder = answers.spreadingSeen === true || answers.streaks === true;
  return {
    outOfProportion: (answers.pain ?? 0) >= STRONG_PAIN,
    discharge: (answers.wetness !== undefined && answers.wetness !== 'dry') || always('discharge'),
    confusion: answers.chills === true || answers.feverC !== undefined,
    swelling: redder || always('swelling'),
    warmth: redder || always('warmth'),
  };
}
