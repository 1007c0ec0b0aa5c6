import { LEAST_U_AREA_SHARE, LEAST_U_LENGTH_MM } from './constants';

/** One photo of the course as the trend reads it. */
export interface ReadPhoto {
  /** Days since the procedure. */
  readonly day: number;
  /** How evidence names it. */
  readonly photo: string;
  readonly usable: boolean;
  readonly reasons: readonly string[];
  readonly measurements: Readonly<Record<string, { readonly value: number; readonly u: number; readonly unit: string } | { readonly notMeasured: string } | undefined>>;
}

export interface SeriesPoint {
  readonly day: number;
  readonly value: number;
  /** Standard uncertainty as the photo gave it. */
  readonly u: number;
  readonly photo: string;
}

/** A place on the axis that has no value, and why. It is never joined across and never zero. */
export interface SeriesGap {
  readonly day: number;
  readonly photo: string;
  readonly reason: string;
}

export interface Series {
  readonly unit: string;
  readonly points: readonly SeriesPoint[];
  readonly gaps: readonly SeriesGap[];
}

/**
 * The values of one measurand over the course, with what could not be measured kept beside them.
 *
 * @param photos in any order
 * @param measurand its name in the measurements
 * @param unit UCUM code of the measurand
 * @returns points and gaps, oldest first; a refused photo is a gap with its reasons
 * @example buildSeries([], 'reach', 'mm') // { unit: 'mm', points: [], gaps: [] }
 */
export function buildSeries(photos: readonly ReadPhoto[], measurand: string, unit: string): Series {
  const points: SeriesPoint[] = [];
  const gaps: SeriesGap[] = [];
  for (const { day, photo, usable, reasons, measurements } of [...photos].sort((a, b) => a.day - b.day)) {
    const found = measurements[measurand];
    if (!usable) gaps.push({ day, photo, reason: reasons.join(', ') || 'notMeasured' });
    else if (found === undefined) gaps.push({ day, photo, reason: 'notGiven' });
    else if ('notMeasured' in found) gaps.push({ day, photo, reason: found.notMeasured });
    else points.push({ day, value: found.value, u: found.u, photo });
  }
  return { unit, points, gaps };
}

/**
 * Standard uncertainty that a comparison may rest on: never below the floor of its kind.
 *
 * @param point a value with its own standard uncertainty
 * @param unit 'mm' has a floor of 0.4 mm; anything else one of 6 % of the value
 * @returns in the unit of the value
 * @example seriesUncertainty({ value: 50, u: 1 }, 'mm2') // 3
 */
export function seriesUncertainty({ value, u }: Pick<SeriesPoint, 'value' | 'u'>, unit: string): number {
  return Math.max(u, unit === 'mm' ? LEAST_U_LENGTH_MM : LEAST_U_AREA_SHARE * Math.abs(value));
}
