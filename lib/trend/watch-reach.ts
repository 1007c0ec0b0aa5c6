import { CUSUM_DECISION, CUSUM_SLACK, EWMA_LIMIT, EWMA_WEIGHT, LEVEL_PHOTOS } from './constants';
import { cusumChart } from './cusum-chart';
import { ewmaChart } from './ewma-chart';
import { medianOfSorted } from './median-of-sorted';
import { type SeriesPoint, seriesUncertainty } from './series';

export interface ReachWatch {
  /** Median of the first three usable reaches, mm: the toe is its own control. */
  readonly levelMm: number;
  readonly ewmaMm: readonly number[];
  readonly ewmaUpperMm: number;
  /** Photo at which each eye first saw a rise; null where it saw none. */
  readonly ewmaSawAt: string | null;
  readonly cusumMm: readonly number[];
  readonly cusumDecisionMm: number;
  readonly cusumSawAt: string | null;
}

/**
 * A second, quicker eye for spreading: EWMA and CUSUM on reach against the toe's own first level.
 *
 * @param points reaches from 48 hours on, oldest first, mm
 * @returns null with fewer than four values: there is no level, or nothing after it
 * It decides nothing; the rules do. One value's standard deviation is the largest uncertainty among the level's photos.
 * @example watchReach([]) // null
 */
export function watchReach(points: readonly SeriesPoint[]): ReachWatch | null {
  const level = points.slice(0, LEVEL_PHOTOS);
  const later = points.slice(LEVEL_PHOTOS);
  if (later.length === 0) return null;
  const levelMm = medianOfSorted(Float64Array.from(level, ({ value }) => value).sort());
  const sMm = Math.max(...level.map((point) => seriesUncertainty(point, 'mm')));
  const values = later.map(({ value }) => value);
  const ewma = ewmaChart(values, levelMm, sMm, EWMA_WEIGHT, EWMA_LIMIT);
  const cusum = cusumChart(values, levelMm, CUSUM_SLACK * sMm, CUSUM_DECISION * sMm);
  const seen = (place: number | null) => (place === null ? null : later[place].photo);
  return {
    levelMm,
    ewmaMm: ewma.smoothed,
    ewmaUpperMm: ewma.upper,
    ewmaSawAt: seen(ewma.firstAbove),
    cusumMm: cusum.up,
    cusumDecisionMm: CUSUM_DECISION * sMm,
    cusumSawAt: seen(cusum.firstUp),
  };
}
