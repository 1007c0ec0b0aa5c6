import type { Answers } from '../care/answers';

export interface ToldAnswer {
  readonly question: string;
  readonly answer: string;
  /** A "yes" to a sign. */
  readonly isSign: boolean;
}

/** In the order in which a nurse wants to know. */
const SIGNS: readonly (readonly [keyof Answers, string])[] = [
  ['streaks', 'Red streaks'],
  ['chills', 'Chills'],
  ['confusion', 'Confusion'],
  ['dusky', 'Black, grey or blue toe'],
  ['cold', 'Cold toe'],
  ['numb', 'Numb'],
  ['boneVisible', 'Bone or tendon visible'],
  ['painOutOfProportion', 'Pain out of proportion'],
  ['bleedingAfterPressure', 'Still bleeding after 20 min of pressure'],
  ['spreadingSeen', 'Redness has spread'],
  ['swelling', 'Swelling'],
  ['warmth', 'Warmth'],
  ['smell', 'Smell'],
  ['cornerTender', 'Tender corner'],
  ['proudTissue', 'Proud red tissue'],
];

/**
 * The answers of one check-in in words. What was not asked is left out; it is never a "no".
 *
 * @param answers as kept
 * @returns signs that were answered with yes come first
 * @example tellAnswers({ pain: 4, streaks: true }) // [{ question: 'Red streaks', answer: 'yes', isSign: true }, { question: 'Pain', answer: '4 of 10', isSign: false }]
 */
export function tellAnswers(answers: Answers): ToldAnswer[] {
  const signs = SIGNS.flatMap(([key, question]) => {
    const said = answers[key];
    return said === undefined ? [] : [{ question, answer: said === true ? 'yes' : 'no', isSign: said === true }];
  });
  const { pain, wetness, dischargeColour, dischargeConsistency, feverC } = answers;
  const told = (question: string, answer: string | undefined): ToldAnswer[] => (answer === undefined ? [] : [{ question, answer, isSign: false }]);
  return [
    ...signs.filter(({ isSign }) => isSign),
    ...told('Temperature', feverC === undefined ? undefined : `${feverC} °C`),
    ...told('Pain', pain === undefined ? undefined : `${pain} of 10`),
    ...told('Dressing', wetness),
    ...told('Discharge', dischargeColour),
    ...told('Consistency', dischargeConsistency),
    ...signs.filter(({ isSign }) => !isSign),
  ];
}
