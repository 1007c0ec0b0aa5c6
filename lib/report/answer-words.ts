import type { Answers } from '../care/answers';

/** One row of the day-by-day table; an empty text means that it was not asked. */
export interface AnswerWords {
  readonly pain: string;
  readonly wetness: string;
  readonly discharge: string;
  readonly smell: string;
  readonly temperature: string;
  readonly signs: string;
}

const SIGNS: readonly (readonly [keyof Answers, string])[] = [
  ['streaks', 'red streaks'],
  ['chills', 'chills'],
  ['confusion', 'confusion'],
  ['spreadingSeen', 'redness has spread'],
  ['swelling', 'new swelling'],
  ['warmth', 'warmth'],
  ['numb', 'numb'],
  ['dusky', 'black or grey'],
  ['cold', 'cold'],
  ['boneVisible', 'bone or tendon seen'],
  ['painOutOfProportion', 'pain out of proportion'],
  ['cornerTender', 'corner tender'],
  ['proudTissue', 'proud red tissue'],
  ['bleedingAfterPressure', 'bleeds after 20 min of pressure'],
  ['bloodRuns', 'blood runs or drips, or faint'],
];

/**
 * A person's answers as words of a table. "No" is only written where no was said.
 *
 * @param answers as sent
 * @example answerWords({ pain: 4, chills: false, warmth: true }).signs // 'warmth; no: chills'
 */
export function answerWords(answers: Answers): AnswerWords {
  const said = SIGNS.filter(([key]) => answers[key] === true).map(([, words]) => words);
  const denied = SIGNS.filter(([key]) => answers[key] === false).map(([, words]) => words);
  const { pain, wetness = '', dischargeColour, dischargeConsistency, smell, feverC } = answers;
  return {
    pain: pain === undefined ? '' : String(pain),
    wetness,
    discharge: [...new Set([dischargeColour, dischargeConsistency].filter((one) => one !== undefined))].join(', '),
    smell: smell === undefined ? '' : smell ? 'yes' : 'no',
    temperature: feverC === undefined ? '' : `${feverC} °C`,
    signs: [said.join(', '), denied.length > 0 ? `no: ${denied.join(', ')}` : ''].filter((one) => one !== '').join('; '),
  };
}
