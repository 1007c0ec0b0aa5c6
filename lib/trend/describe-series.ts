import { GAP_DAYS, LEAST_PHOTOS_FOR_TREND, TREND_CONFIDENCE, TREND_LEVEL } from './constants';
import { type Change, detectableChange } from './detectable-change';
import { type MannKendall, mannKendall } from './mann-kendall';
import { percentAreaReduction } from './percent-area-reduction';
import type { Series, SeriesPoint } from './series';
import { type TheilSen, theilSen } from './theil-sen';

export interface DescribedSeries extends Series {
  /** Lines are drawn within a stretch and never between two. */
  readonly stretches: readonly (readonly [fromDay: number, toDay: number])[];
  /** Per day, with its 95 % interval; null with fewer than two days. */
  readonly slopePerDay: TheilSen | null;
  /** With fewer than four photos no trend can be claimed at 95 %, and none is. */
  readonly trend: 'rises' | 'falls' | 'noTrendSeen' | 'tooFewPhotos';
  readonly mannKendall: MannKendall | null;
  readonly peak: SeriesPoint | null;
  /** Percent lost since the peak; null where there is no area above zero, and for lengths. */
  readonly percentReductionFromPeak: number | null;
  /** The newest value against the one before. */
  readonly lastChange: Change | null;
}

/**
 * All that is said about one series: slope, test, peak, last change, and where its gaps are.
 *
 * @param series points oldest first
 * @example describeSeries({ unit: 'mm', points: [], gaps: [] }).trend // 'tooFewPhotos'
 */
export function describeSeries(series: Series): DescribedSeries {
  const { points, unit } = series;
  const days = points.map(({ day }) => day);
  const values = points.map(({ value }) => value);
  const newest = points.at(-1);
  const before = points[points.length - 2] as SeriesPoint | undefined;
  const test = points.length >= 2 ? mannKendall(values) : null;
  const peak = points.reduce<SeriesPoint | null>((top, point) => (top === null || point.value > top.value ? point : top), null);
  const isArea = unit !== 'mm' && peak !== null && peak.value > 0;
  return {
    ...series,
    stretches: stretchesOf(series),
    slopePerDay: new Set(days).size >= 2 ? theilSen(days, values, TREND_CONFIDENCE) : null,
    trend: trendOf(test),
    mannKendall: test,
    peak,
    percentReductionFromPeak: isArea && newest ? percentAreaReduction(peak.value, newest.value) : null,
    lastChange: newest && before ? detectableChange(before, newest, unit) : null,
  };
}

function trendOf(test: MannKendall | null): DescribedSeries['trend'] {
  if (test === null || test.n < LEAST_PHOTOS_FOR_TREND) return 'tooFewPhotos';
  if (test.risingTail <= TREND_LEVEL) return 'rises';
  return test.fallingTail <= TREND_LEVEL ? 'falls' : 'noTrendSeen';
}

/** A refused photo or two missed days end a stretch. */
function stretchesOf({ points, gaps }: Series): [number, number][] {
  const stretches: [number, number][] = [];
  for (const { day } of points) {
    const last = stretches.at(-1);
    const joined = last && day - last[1] <= GAP_DAYS && !gaps.some((gap) => gap.day > last[1] && gap.day < day);
    if (joined) last[1] = day;
    else stretches.push([day, day]);
  }
  return stretches;
}
