import type { Answers } from '../../../lib/care/answers';
import type { RandomSource } from '../../phantom/random/random-source';
import { type CourseTruth, daysIn, trueRawMm2 } from './course-truth';

/** Wrong taps on a plain question; and on one that calls for help at once, which the page asks back. */
const WRONG = 0.005;
const WRONG_WARNING = 0.00005;

type YesNo = 'warmth' | 'swelling' | 'spreadingSeen' | 'cornerTender' | 'proudTissue' | 'smell';
type Warning = 'streaks' | 'chills' | 'confusion' | 'dusky' | 'cold' | 'boneVisible' | 'painOutOfProportion' | 'numb';

export interface DrawnAnswers {
  readonly answers: Answers;
  /** A warning was tapped by mistake. */
  readonly wrongWarning: boolean;
}

/** What the person says on this day: mostly true, sometimes wrong, sometimes not asked. */
export function drawAnswers(truth: CourseTruth, day: number, random: RandomSource): DrawnAnswers {
  const warnings = drawWarnings(truth, day, random);
  const spreads = isInflamed(truth, day) && !truth.isSilentSufferer;
  const yes = (really: boolean, seen = 0.85): boolean => (really ? random.chance(seen) : random.chance(WRONG));
  const early = random.chance(Math.exp(-day / 1.6));
  const asked = (question: YesNo, value: boolean): Partial<Answers> => (random.chance(0.9) ? { [question]: value } : {});
  return {
    wrongWarning: warnings.wrong,
    answers: {
      pain: drawPain(truth, day, random),
      ...drawDischarge(truth, day, random),
      ...(random.chance(0.2) ? { feverC: drawTemperature(truth, day, random) } : {}),
      ...asked('warmth', yes(spreads, 0.5) || (early && random.chance(0.3))),
      ...asked('swelling', yes(spreads, 0.5) || early),
      ...asked('spreadingSeen', yes(spreads && truth.kind === 'spreading', 0.3)),
      ...asked('cornerTender', yes(truth.kind === 'spike-suspect' && daysIn(truth, day) > 0)),
      ...asked('proudTissue', yes(truth.kind === 'over-granulation' && daysIn(truth, day) > 0)),
      ...asked('smell', yes(truth.kind === 'purulent' && daysIn(truth, day) > 0, 0.5)),
      ...(truth.kind === 'bleeding' && daysIn(truth, day) > 0 ? { bleedingAfterPressure: true } : {}),
      ...warnings.answers,
    },
  };
}

const INFLAMED: readonly string[] = ['spreading', 'reach-moderate', 'reach-mild', 'antibiotic-no-better'];

/** Signs follow redness by about a day. */
const isInflamed = (truth: CourseTruth, day: number): boolean => INFLAMED.includes(truth.kind) && daysIn(truth, day) > 1;

function drawWarnings(truth: CourseTruth, day: number, random: RandomSource): { answers: Partial<Record<Warning, boolean>>; wrong: boolean } {
  const answers: Partial<Record<Warning, boolean>> = {};
  let wrong = false;
  const real = daysIn(truth, day) > 0;
  for (const question of ['streaks', 'chills', 'confusion', 'dusky', 'cold', 'boneVisible', 'painOutOfProportion', 'numb'] as const) {
    const slip = random.chance(WRONG_WARNING);
    wrong ||= slip;
    answers[question] = slip;
  }
  if (real && truth.kind === 'streak-or-fever') answers[truth.foldLengthMm > 11 ? 'streaks' : 'chills'] = random.chance(0.85);
  if (real && truth.kind === 'dusky-toe') answers[truth.foldLengthMm > 11 ? 'dusky' : 'painOutOfProportion'] = random.chance(0.85);
  if (day < 0.8 && random.chance(0.3)) answers.numb = true;
  return { answers, wrong };
}

function drawPain(truth: CourseTruth, day: number, random: RandomSource): number {
  if (random.chance(WRONG)) return random.whole(0, 10);
  const own = truth.firstPain * Math.exp(-day / 3);
  const rises = truth.kind === 'pain-rising' || (isInflamed(truth, day) && !truth.isSilentSufferer) ? Math.min(6, 1.2 * daysIn(truth, day)) : 0;
  const lasting = truth.kind === 'bone-felt' && daysIn(truth, day) > 0 ? 5 : 0;
  return Math.min(10, Math.max(0, Math.round(own + rises + lasting + 0.6 * random.normal())));
}

function drawTemperature(truth: CourseTruth, day: number, random: RandomSource): number {
  const fever = truth.kind === 'streak-or-fever' && daysIn(truth, day) > 0 ? 1.8 : 0;
  return Math.round(10 * Math.min(41, Math.max(34.5, 36.6 + fever + 0.3 * random.normal()))) / 10;
}

function drawDischarge(truth: CourseTruth, day: number, random: RandomSource): Partial<Answers> {
  if (truth.kind === 'purulent' && daysIn(truth, day) > 0 && random.chance(0.8)) {
    return { wetness: 'wet', dischargeColour: random.pick(['yellow', 'green']), dischargeConsistency: random.pick(['thick', 'creamy', 'milky']) };
  }
  const relapsed = truth.kind === 'relapse' && daysIn(truth, day) > 0;
  const dry = day >= truth.dryDay && !relapsed && truth.kind !== 'stalled';
  if (random.chance(0.02) ? !dry : dry) return { wetness: 'dry', dischargeColour: 'none', dischargeConsistency: 'none' };
  // Straw-coloured and watery is what most see; "thick" is a wrong word of few.
  const wet = relapsed || trueRawMm2(truth, day) > 6;
  return {
    wetness: wet ? 'wet' : 'damp',
    dischargeColour: random.chance(0.5) ? 'clear' : random.pick(['yellow', 'bloody']),
    dischargeConsistency: random.chance(WRONG) ? 'thick' : 'watery',
  };
}
