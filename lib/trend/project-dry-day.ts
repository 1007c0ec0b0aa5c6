import { CLOSED_SHARE, FARTHEST_PROJECTION_DAYS, LEAST_PHOTOS_FOR_PROJECTION, TREND_CONFIDENCE } from './constants';
import type { SeriesPoint } from './series';
import { theilSen } from './theil-sen';

export interface DryProjection {
  /** Share lost per day, as a rate. */
  readonly ratePerDay: number;
  /** Days since the procedure. `toDay` is null where the slowest rate that fits never gets there in a time worth naming. */
  readonly fromDay: number;
  readonly day: number;
  readonly toDay: number | null;
}

export type DryProjectionOrReason = DryProjection | { readonly notProjected: 'tooFewPhotos' | 'notShrinking' | 'alreadyClosed' };

/**
 * When the raw area would be down to a twentieth of its peak if it went on shrinking as it does, as an interval.
 *
 * @param points raw areas, oldest first, mm²
 * @returns days since the procedure, or why nothing is projected
 * The rate is the robust slope of the logarithm from the peak on: one wild photo does not move it. Values at or below
 * zero have no logarithm and are left out. Source: exponential closure, BMC Dermatol 2009;9:2; at least five areas,
 * Cukjati et al. 2001.
 * @example projectDryDay([]) // { notProjected: 'tooFewPhotos' }
 */
export function projectDryDay(points: readonly SeriesPoint[]): DryProjectionOrReason {
  const peak = points.reduce((at, point, place) => (point.value > points[at].value ? place : at), 0);
  const shrinking = points.slice(peak).filter(({ value }) => value > 0);
  if (shrinking.length < LEAST_PHOTOS_FOR_PROJECTION) return { notProjected: 'tooFewPhotos' };
  const closed = CLOSED_SHARE * points[peak].value;
  const newest = points[points.length - 1];
  if (newest.value <= closed) return { notProjected: 'alreadyClosed' };
  const logs = shrinking.map(({ value }) => Math.log(value));
  const fit = theilSen(shrinking.map(({ day }) => day), logs, TREND_CONFIDENCE);
  if (!(fit.slope < 0)) return { notProjected: 'notShrinking' };
  const dayAt = (slope: number) => newest.day + Math.log(newest.value / closed) / -slope;
  const slowest = fit.slopeTo < 0 ? dayAt(fit.slopeTo) : Infinity;
  const fitted = dayAt(fit.slope);
  if (fitted > newest.day + FARTHEST_PROJECTION_DAYS) return { notProjected: 'notShrinking' };
  return {
    ratePerDay: -fit.slope,
    fromDay: dayAt(fit.slopeFrom),
    day: fitted,
    toDay: slowest <= newest.day + FARTHEST_PROJECTION_DAYS ? slowest : null,
  };
}
