import { LEAST_PHOTOS_FOR_TREND } from '../trend/constants';
import type { DescribedSeries } from '../trend/describe-series';

export interface SeriesWords {
  /** As people write it. */
  readonly unit: string;
  /** What one value comes from: a photo, or a report. */
  readonly of: 'photo' | 'report';
}

/** Smaller tails are written as below this. */
const LEAST_P = 0.001;

/**
 * A number with at most one decimal.
 * @example trendNumberWords(12.04) // '12'
 */
export const trendNumberWords = (value: number): string => String(Number(value.toFixed(1)) + 0);

/**
 * A day of the course for a sentence.
 * @example trendDayWords(3.96) // 'day 4.0'
 */
export const trendDayWords = (day: number): string => `day ${day.toFixed(1)}`;

/**
 * All that a plot shows, in sentences: newest value, trend with its test, every gap, and the last change. It never judges.
 *
 * @param series as the trend describes it
 * @param words unit for people, and what its values come from
 * @returns what always stands beside the plot, and what stands with its table
 * @example trendWords({ unit: 'mm', points: [], gaps: [], stretches: [], slopePerDay: null, trend: 'tooFewPhotos', mannKendall: null, peak: null, percentReductionFromPeak: null, lastChange: null }, { unit: 'mm', of: 'photo' }).said[0] // 'No value yet.'
 */
export function trendWords(series: DescribedSeries, words: SeriesWords): { readonly said: readonly string[]; readonly more: readonly string[] } {
  const gaps = gapWords(series);
  const said = [newestWords(series, words), trendSentence(series, words), ...(series.gaps.length > 0 ? [gaps] : [])];
  const more = [lastChangeWords(series, words), ...(series.gaps.length > 0 ? [] : [gaps])];
  return { said, more: more.filter((one) => one !== '') };
}

function newestWords({ points }: DescribedSeries, { unit, of }: SeriesWords): string {
  const newest = points.at(-1);
  if (newest === undefined) return 'No value yet.';
  const band = of === 'photo' ? ` ± ${trendNumberWords(2 * newest.u)}` : '';
  return `Newest: ${trendNumberWords(newest.value)}${band} ${unit} on ${trendDayWords(newest.day)}.`;
}

function trendSentence({ trend, points, mannKendall, slopePerDay }: DescribedSeries, { unit, of }: SeriesWords): string {
  const count = points.length;
  if (trend === 'tooFewPhotos' || mannKendall === null) {
    return `Too few ${of}s for a trend: ${count} of the ${LEAST_PHOTOS_FOR_TREND} that it takes.`;
  }
  const said = { rises: 'Rises', falls: 'Falls', noTrendSeen: 'No trend can be shown' }[trend];
  const tail = Math.min(mannKendall.risingTail, mannKendall.fallingTail);
  const test = `one-sided Mann–Kendall p ${tail < LEAST_P ? `< ${LEAST_P}` : `= ${tail.toFixed(3)}`}`;
  const slope = slopePerDay
    ? ` Slope ${slopeNumber(slopePerDay.slope)} ${unit} a day, 95 % interval ${slopeNumber(slopePerDay.slopeFrom)} to ${slopeNumber(slopePerDay.slopeTo)}.`
    : '';
  return `${said} over ${count} ${of}s (${test}).${slope}`;
}

/** Two figures: a groove's slope is a few hundredths. */
const slopeNumber = (value: number): string => String(Number(value.toPrecision(2)) + 0).replace('-', '−');

function lastChangeWords({ lastChange }: DescribedSeries, { unit, of }: SeriesWords): string {
  if (lastChange === null || of === 'report') return '';
  const { difference, smallestDetectable, seen } = lastChange;
  const signed = `${difference < 0 ? '−' : '+'}${trendNumberWords(Math.abs(difference))} ${unit}`;
  return `Last change ${signed}; smallest change we can see is ${trendNumberWords(smallestDetectable)} ${unit}${seen ? '' : ', so it may be none'}.`;
}

function gapWords({ gaps }: DescribedSeries): string {
  if (gaps.length === 0) return 'No gaps.';
  const each = gaps.map(({ day, reason }) => `${trendDayWords(day)} (${gapReasonWords(reason)})`);
  return `${gaps.length === 1 ? 'One gap' : `${gaps.length} gaps`}: ${each.join('; ')}.`;
}

/**
 * Why a place on the axis has no value, in a few words.
 *
 * @param reason ids of gates or a reason of the measurement, as a gap carries them
 * @example gapReasonWords('contrastTooLow') // 'contrast too low'
 */
export function gapReasonWords(reason: string): string {
  if (reason === 'noRegionFound') return 'no region stood out, which does not show that there is none';
  return reason.replace(/([A-Z])/g, (capital) => ` ${capital.toLowerCase()}`);
}
