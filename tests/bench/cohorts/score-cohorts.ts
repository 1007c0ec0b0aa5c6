import type { RuleId } from '../../../lib/decide/finding';
import { classGap } from './class-gap';
import { type CourseKind, hourOf2MmGrowth, ITA_CLASSES } from './course-truth';
import { ADMINISTRATIVE, isFalseInClean, type JudgedEpisode, judgeEpisode, RED_RULES, type TimedFinding } from './judge-cohort';
import { type Share, wilsonInterval } from './wilson-interval';

/** Three times what is asked for at least: with 3,000 and 2,400 a false "now" and the gap between classes of skin are mostly chance, from seed to seed. */
export const SIZES = { clean: 9000, spreading: 7200, others: 402 } as const;
const OTHERS: readonly Exclude<CourseKind, 'clean' | 'spreading'>[] = [
  'spreading-proximal', 'reach-moderate', 'reach-mild', 'streak-or-fever', 'dusky-toe', 'bleeding', 'purulent', 'pain-rising', 'stalled', 'late',
  'relapse', 'spike-suspect', 'bone-felt', 'macerated', 'over-granulation', 'antibiotic-no-better', 'silent', 'cannot-judge',
];

export interface RuleScore {
  readonly caught: Share;
  readonly caughtShare: number;
  readonly medianDelayPhotos: number | null;
  readonly p95DelayPhotos: number | null;
  readonly medianDelayHours: number | null;
  readonly p95DelayHours: number | null;
}

export interface SpreadScore {
  /** By the second visit with a usable photo on which redness had a reach, after 2 mm of true growth. */
  readonly bySecondPhoto: Share;
  /** The same, visits counted on which the photo could be used and redness could not be seen. */
  readonly bySecondUsablePhoto: Share;
  /** By the second single photo with a reach, be it a retake minutes after the first. */
  readonly bySecondRetake: Share;
}

export type CohortScores = ReturnType<typeof scoreCohorts>;

/** Draws all cohorts of a seed, judges them, and counts. */
export function scoreCohorts(seed: number) {
  const clean = cohort('clean', SIZES.clean, seed);
  const spreading = cohort('spreading', SIZES.spreading, seed);
  const others = OTHERS.map((kind) => [kind, scoreRule(kind, cohort(kind, SIZES.others, seed))] as const);
  const fast = spreading.filter(({ invented }) => invented.truth.spreadMmPerDay >= 2);
  const inClass = (all: readonly JudgedEpisode[], place: number) => all.filter(({ invented }) => invented.truth.itaClass === place);
  const byItaClass = Object.fromEntries(ITA_CLASSES.map((name, place) => [name, { ...scoreSpread(inClass(fast, place)), ...scoreClean(inClass(clean, place)) }]));
  return {
    seed,
    episodes: clean.length + spreading.length + OTHERS.length * SIZES.others,
    clean: scoreClean(clean),
    spreadingFrom2MmPerDay: scoreSpread(fast),
    rules: Object.fromEntries([['spreading', scoreRule('spreading', spreading)], ...others, ['dry', scoreDry(clean)]]) as Record<RuleId, RuleScore>,
    byItaClass,
    classGap: classGap(Object.values(byItaClass).map(({ bySecondPhoto }) => bySecondPhoto)),
  };
}

const cohort = (kind: CourseKind, size: number, seed: number): JudgedEpisode[] => Array.from({ length: size }, (_, place) => judgeEpisode(kind, place, seed));

function scoreClean(clean: readonly JudgedEpisode[]) {
  const falseOnes = clean.map((episode) => episode.findings.filter((finding) => isFalseInClean(episode, finding)));
  const per100 = (isMeant: (finding: TimedFinding) => boolean) => (100 * falseOnes.flat().filter(isMeant).length) / clean.length;
  const share = (isMeant: (finding: TimedFinding) => boolean) => wilsonInterval(falseOnes.filter((all) => all.some(isMeant)).length, clean.length);
  const isNow = ({ level }: TimedFinding) => level === 'now';
  const isRed = ({ rule }: TimedFinding) => RED_RULES.includes(rule);
  const byRule = countBy(falseOnes.flat(), ({ rule }) => rule);
  const wrongTaps = clean.filter(({ invented, findings }) => invented.wrongWarning && findings.some(isNow)).length;
  return {
    episodes: clean.length,
    falseRedPer100: per100(isRed),
    falseNowPer100: per100(isNow),
    falseAnyPer100: per100(() => true),
    withFalseRed: share(isRed),
    withFalseNow: share(isNow),
    withAnyFalse: share(() => true),
    falseByLevelPer100: scale(countBy(falseOnes.flat(), ({ level }) => level), 100 / clean.length),
    falseByRulePer100: scale(byRule, 100 / clean.length),
    nowFromWrongTapsPer100: (100 * wrongTaps) / clean.length,
    administrativePer100: (100 * clean.flatMap(({ findings }) => findings).filter(({ rule }) => ADMINISTRATIVE.includes(rule)).length) / clean.length,
  };
}

/** Photos less than this apart are one visit. */
const SAME_VISIT_HOURS = 6;

function scoreSpread(spreading: readonly JudgedEpisode[]): SpreadScore {
  const inTime = (hoursOf: (one: JudgedEpisode) => readonly number[], apartHours = SAME_VISIT_HOURS) => {
    const judged = spreading.flatMap((one) => {
      const { eventDay } = one.invented.truth;
      const grown = hourOf2MmGrowth(one.invented.truth) ?? Infinity;
      const after = hoursOf(one).filter((hours) => hours >= grown);
      const second = after.find((hours) => hours - after[0] >= apartHours && hours > after[0]);
      // A phone that was offline hands the photo over later; judged then, it was judged at once.
      return second === undefined ? [] : [one.findings.some(({ rule, hours }) => rule === 'spreading' && hours >= 24 * (eventDay ?? 0) && hours <= second + 11)];
    });
    return wilsonInterval(judged.filter((hit) => hit).length, judged.length);
  };
  return { bySecondPhoto: inTime(({ reachHours }) => reachHours), bySecondUsablePhoto: inTime(({ usableHours }) => usableHours), bySecondRetake: inTime(({ reachHours }) => reachHours, 0) };
}

function scoreRule(rule: RuleId, all: readonly JudgedEpisode[]): RuleScore {
  return scoreDelays(
    all.map(({ invented: { truth }, findings, usableHours }) => {
      const from = 24 * (truth.eventDay ?? 0);
      const found = findings.find((one) => one.rule === rule && (one.hours >= from || one.hours === 0));
      return found ? { photos: usableHours.filter((hours) => hours >= from && hours <= found.hours).length, hours: Math.max(0, found.hours - from) } : null;
    }),
  );
}

/** Dryness in clean courses, against the true day. */
function scoreDry(clean: readonly JudgedEpisode[]): RuleScore {
  return scoreDelays(
    clean.map(({ invented: { truth }, findings, usableHours }) => {
      const from = 24 * (truth.dryDay - 1);
      const found = findings.find((one) => one.rule === 'dry' && one.hours >= from);
      return found ? { photos: usableHours.filter((hours) => hours >= from && hours <= found.hours).length, hours: found.hours - from } : null;
    }),
  );
}

function scoreDelays(delays: readonly ({ photos: number; hours: number } | null)[]): RuleScore {
  const caught = delays.flatMap((one) => (one ? [one] : []));
  const photos = caught.map((one) => one.photos).sort((a, b) => a - b);
  const hours = caught.map((one) => one.hours).sort((a, b) => a - b);
  const share = wilsonInterval(caught.length, delays.length);
  return {
    caught: share,
    caughtShare: share.share,
    medianDelayPhotos: quantile(photos, 0.5),
    p95DelayPhotos: quantile(photos, 0.95),
    medianDelayHours: quantile(hours, 0.5),
    p95DelayHours: quantile(hours, 0.95),
  };
}

const quantile = (sorted: readonly number[], share: number): number | null => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? null;

function countBy(all: readonly TimedFinding[], keyOf: (one: TimedFinding) => string): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const one of all) counts[keyOf(one)] = (counts[keyOf(one)] ?? 0) + 1;
  return counts;
}

const scale = (counts: Record<string, number>, by: number): Record<string, number> => Object.fromEntries(Object.entries(counts).map(([key, count]) => [key, count * by]));
