import type { PointMm } from '../units';

/**
 * Is a point inside a closed outline? Even–odd rule; the last point is joined to the first.
 *
 * @example isInsideOutline({ acrossMm: 1, downMm: 1 }, unitSquareTimesTwo) // true
 */
export function isInsideOutline(point: PointMm, outline: readonly PointMm[]): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const a = outline[i];
    const b = outline[j];
    const crosses = a.downMm > point.downMm !== b.downMm > point.downMm;
    if (crosses && point.acrossMm < a.acrossMm + ((point.downMm - a.downMm) / (b.downMm - a.downMm)) * (b.acrossMm - a.acrossMm)) inside = !inside;
  }
  return inside;
}
