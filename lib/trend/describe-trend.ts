import { type DescribedSeries, describeSeries } from './describe-series';
import { gilmanAdvance, groovePerimeterForGilmanAdvance } from './gilman-advance';
import { type DryProjectionOrReason, projectDryDay } from './project-dry-day';
import { buildSeries, type ReadPhoto, type SeriesPoint } from './series';
import { type ReachWatch, watchReach } from './watch-reach';

/** What is followed over the course, with its unit. Reach is the unrolled one where every usable photo with a reach has it, else the projected one. */
export const FOLLOWED_SERIES = {
  reach: 'mm',
  proximalReach: 'mm',
  erythemaArea: 'mm2',
  rednessLoad: '{EI}.mm2',
  rawArea: 'mm2',
  grooveWidth: 'mm',
} as const;
export type FollowedSeries = keyof typeof FOLLOWED_SERIES;

export interface Trend {
  readonly series: Readonly<Record<FollowedSeries, DescribedSeries>>;
  /** Photos that failed a gate, for marks on the axis. */
  readonly refused: readonly { readonly day: number; readonly photo: string; readonly reasons: readonly string[] }[];
  readonly projectedDry: DryProjectionOrReason;
  /** Mean way of the raw area's edge since its peak, the groove taken as a rectangle; it understates a thin groove. */
  readonly linearAdvanceMm: { readonly value: number; readonly perDay: number; readonly sincePhoto: string } | null;
  readonly reachWatch: ReachWatch | null;
}

const LEVEL_FROM_DAY = 2;

/**
 * The trend of a course: series with gaps, slopes, projection and the quicker eye on reach.
 *
 * @param photos every photo of the course, in any order, days since the procedure
 * @returns plain data; everything in it can be shown as a table
 * @example describeTrend([]).projectedDry // { notProjected: 'tooFewPhotos' }
 */
export function describeTrend(photos: readonly ReadPhoto[]): Trend {
  const oneReach = photos.every(isUnrolledIfReached) ? photos.map(preferUnrolled) : photos;
  const described = (name: FollowedSeries) => describeSeries(buildSeries(oneReach, name, FOLLOWED_SERIES[name]));
  const names = Object.keys(FOLLOWED_SERIES) as FollowedSeries[];
  const series = Object.fromEntries(names.map((name) => [name, described(name)])) as Record<FollowedSeries, DescribedSeries>;
  return {
    series,
    refused: photos
      .filter(({ usable }) => !usable)
      .map(({ day, photo, reasons }) => ({ day, photo, reasons }))
      .sort((a, b) => a.day - b.day),
    projectedDry: projectDryDay(series.rawArea.points),
    linearAdvanceMm: linearAdvance(series.rawArea, series.grooveWidth.points),
    reachWatch: watchReach(series.reach.points.filter(({ day }) => day >= LEVEL_FROM_DAY)),
  };
}

const isMeasuredOn = ({ measurements }: ReadPhoto, name: 'reach' | 'unrolledReach'): boolean => {
  const found = measurements[name];
  return found !== undefined && 'value' in found;
};

/** A series of two kinds of reach would step where they change. */
const isUnrolledIfReached = (photo: ReadPhoto): boolean => !photo.usable || !isMeasuredOn(photo, 'reach') || isMeasuredOn(photo, 'unrolledReach');

function preferUnrolled(photo: ReadPhoto): ReadPhoto {
  const unrolled = photo.measurements.unrolledReach;
  const usable = unrolled !== undefined && 'value' in unrolled;
  return usable ? { ...photo, measurements: { ...photo.measurements, reach: unrolled } } : photo;
}

function linearAdvance(raw: DescribedSeries, widths: readonly SeriesPoint[]): Trend['linearAdvanceMm'] {
  const newest = raw.points.at(-1);
  if (!raw.peak || !newest || newest.day <= raw.peak.day) return null;
  const [before, after] = [raw.peak, newest].map(({ photo, value }) => {
    const width = widths.find((one) => one.photo === photo)?.value ?? 0;
    return width > 0 && value >= 0 ? { areaMm2: value, perimeterMm: groovePerimeterForGilmanAdvance(value, width) } : null;
  });
  if (!before || !after) return null;
  const value = gilmanAdvance(before, after);
  return { value, perDay: value / (newest.day - raw.peak.day), sincePhoto: raw.peak.photo };
}
