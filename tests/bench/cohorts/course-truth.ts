import type { Matricectomy } from '../../../lib/care/procedure';
import type { RuleId } from '../../../lib/decide/finding';
import type { RandomSource } from '../../phantom/random/random-source';

/** What goes wrong in an invented course, if anything: the rule that should see it, or nothing. */
export type CourseKind = 'clean' | Exclude<RuleId, 'dry'>;

export const ITA_CLASSES = ['very light', 'light', 'intermediate', 'tan', 'brown', 'dark'] as const;
/** Bounds of the six classes (Del Bino and Bernerd 2013), the outer two closed where skin ends. */
const ITA_BOUNDS = [70, 55, 41, 28, 10, -30, -60] as const;

/** How often the claimed u is the true one, 30 % too small, or 40 % too large. */
const CLAIMS = [1, 0.7, 1.4] as const;

/** What is true of an invented toe; every figure is ours, in the range of the trials and leaflets the rule book names. */
export interface CourseTruth {
  readonly kind: CourseKind;
  readonly itaClass: number;
  readonly itaDeg: number;
  readonly matricectomy: Matricectomy;
  /** When it begins to go wrong; null in a clean course. */
  readonly eventDay: number | null;
  readonly dryDay: number;
  readonly spreadMmPerDay: number;
  /** Says nothing of warmth, swelling or pain although it spreads. */
  readonly isSilentSufferer: boolean;
  readonly claim: number;
  readonly foldLengthMm: number;
  readonly firstReachMm: number;
  readonly fadeDays: number;
  readonly bumpMm: number;
  readonly bumpDay: number;
  readonly firstRawMm2: number;
  readonly firstPain: number;
  readonly proximalShare: number;
  /** Share of an unrolled length that the projection shows. */
  readonly projectedShare: number;
}

const MATRICECTOMY_WEIGHTS: readonly (readonly [Matricectomy, number])[] = [
  ['none', 0.3],
  ['naoh', 0.1],
  ['phenol30', 0.3],
  ['phenol60', 0.2],
  ['unknown', 0.1],
];

/** Mean and spread of the day on which it is dry: Bostanci 2007, Muriel-Sánchez 2020 and 2021, handouts for "none". */
const DRY_DAY: Readonly<Record<Matricectomy, readonly [number, number]>> = {
  none: [9.5, 2.2],
  naoh: [10.8, 2.6],
  phenol30: [14.9, 2.8],
  phenol60: [22.1, 3.2],
  unknown: [17, 4.5],
};

/** Day on which each kind of trouble may begin. */
const EVENT_DAYS: Readonly<Partial<Record<CourseKind, readonly [number, number]>>> = {
  spreading: [3, 10],
  'spreading-proximal': [3, 10],
  'reach-moderate': [3, 8],
  'reach-mild': [3.5, 8],
  purulent: [3, 9],
  'streak-or-fever': [2, 12],
  'dusky-toe': [1.5, 6],
  bleeding: [0.2, 4],
  'pain-rising': [4, 9],
  stalled: [2, 5],
  macerated: [3, 9],
  'over-granulation': [6, 14],
  'antibiotic-no-better': [4, 8],
  silent: [3, 12],
  'cannot-judge': [3, 9],
  'spike-suspect': [11, 14],
  'bone-felt': [12, 15],
};

function pickWeighted(random: RandomSource): Matricectomy {
  let left = random.next();
  for (const [one, weight] of MATRICECTOMY_WEIGHTS) if ((left -= weight) < 0) return one;
  return 'unknown';
}

/** Draws what is true of one toe. */
export function drawTruth(kind: CourseKind, itaClass: number, random: RandomSource): CourseTruth {
  const matricectomy = pickWeighted(random);
  const chemical = matricectomy !== 'none';
  const [mean, sd] = DRY_DAY[matricectomy];
  const eventDays = EVENT_DAYS[kind];
  const lasting = kind === 'late' ? 60 : kind === 'bone-felt' || kind === 'spike-suspect' || kind === 'over-granulation' || kind === 'stalled' ? 25 : 0;
  const dryDay = Math.max(5, mean + sd * random.normal()) + lasting;
  return {
    kind,
    itaClass,
    itaDeg: random.between(ITA_BOUNDS[itaClass + 1], ITA_BOUNDS[itaClass]),
    matricectomy,
    eventDay: kind === 'relapse' ? dryDay + random.between(2, 4) : eventDays ? random.between(...eventDays) : null,
    dryDay,
    spreadMmPerDay: kind === 'reach-moderate' ? random.between(3, 6) : random.between(1, 4),
    isSilentSufferer: random.chance(0.25),
    claim: random.pick(CLAIMS),
    foldLengthMm: random.between(8, 14),
    firstReachMm: Math.exp(Math.log(2.8) + 0.35 * random.normal()),
    fadeDays: random.between(7, 21),
    bumpMm: chemical ? random.between(0.5, 3) : random.between(0, 0.6),
    bumpDay: random.between(2, 5),
    firstRawMm2: random.between(12, 34),
    firstPain: Math.max(0, 4 + 1.6 * random.normal()),
    proximalShare: random.between(0.3, 0.7),
    projectedShare: random.between(0.65, 0.95),
  };
}

/** Days since the trouble began; 0 before, and where there is none. */
export const daysIn = ({ eventDay }: CourseTruth, day: number): number => (eventDay === null ? 0 : Math.max(0, day - eventDay));

/** Unrolled reach on a day: it fades over one to three weeks, with a sterile bump on days 2–5 after a chemical. */
export function trueReachMm(truth: CourseTruth, day: number): number {
  const { kind, firstReachMm, fadeDays, bumpMm, bumpDay, spreadMmPerDay } = truth;
  const own = firstReachMm * Math.exp(-day / fadeDays) + bumpMm * Math.exp(-(((day - bumpDay) / 2.2) ** 2));
  const inDays = daysIn(truth, day);
  if (kind === 'spreading' || kind === 'reach-moderate') return Math.min(38, own + spreadMmPerDay * inDays);
  if (kind === 'reach-mild' || kind === 'antibiotic-no-better' || kind === 'bone-felt') return own + (inDays > 0 ? Math.min(5 + 0.6 * spreadMmPerDay, 4 * inDays) : 0);
  return kind === 'relapse' ? own + Math.min(3, 1.5 * inDays) : own;
}

/** How far redness goes toward the ankle beyond the margin's most proximal point. */
export function trueProximalMm(truth: CourseTruth, day: number): number {
  const share = truth.proximalShare * trueReachMm(truth, day);
  // A spike inflames the corner it grows into.
  if (truth.kind === 'spike-suspect' && daysIn(truth, day) > 0) return share + 2.5;
  return truth.kind === 'spreading-proximal' ? share + truth.spreadMmPerDay * daysIn(truth, day) : share;
}

/** Raw area on a day: it shrinks by an exponential that is down to a twentieth when dry. */
export function trueRawMm2(truth: CourseTruth, day: number): number {
  const { kind, firstRawMm2, dryDay } = truth;
  if (kind === 'relapse' && daysIn(truth, day) > 0) return 3;
  if (kind !== 'stalled' && day >= dryDay) return 0;
  const shrinks = kind === 'stalled' ? Math.min(day, truth.eventDay ?? day) / 4 : day;
  const healthyDryDay = kind === 'stalled' ? 20 : dryDay;
  return firstRawMm2 * Math.exp((-3 * shrinks) / healthyDryDay);
}

const HOURS_PER_DAY = 24;

/** First hour at which true reach stands 2 mm above the lowest it has been: growth that is there to be seen. Null where there is none. */
export function hourOf2MmGrowth(truth: CourseTruth): number | null {
  let lowest = Infinity;
  for (let hour = 0; hour < 40 * HOURS_PER_DAY; hour++) {
    const reach = trueReachMm(truth, hour / HOURS_PER_DAY);
    lowest = Math.min(lowest, reach);
    if (daysIn(truth, hour / HOURS_PER_DAY) > 0 && reach - lowest >= 2) return hour;
  }
  return null;
}
