import type { LineMm, PointMm } from '../units';

const STEPS = 8;

/**
 * A smooth line through points, as a pen would draw it (a uniform Catmull–Rom spline; Catmull and Rom 1974).
 *
 * @param points at least two, mm
 * @returns a line through all of them with 8 steps between neighbours.
 * @example smoothLine([{ acrossMm: 0, downMm: 0 }, { acrossMm: 8, downMm: 0 }]).length // 9
 */
export function smoothLine(points: readonly PointMm[]): LineMm {
  const at = (place: number): PointMm => points[Math.min(points.length - 1, Math.max(0, place))];
  const blend = (a: number, b: number, c: number, d: number, t: number): number =>
    b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
  const line = points.slice(0, -1).flatMap((_, place) => {
    const [a, b, c, d] = [at(place - 1), at(place), at(place + 1), at(place + 2)];
    return Array.from({ length: STEPS }, (__, step) => ({
      acrossMm: blend(a.acrossMm, b.acrossMm, c.acrossMm, d.acrossMm, step / STEPS),
      downMm: blend(a.downMm, b.downMm, c.downMm, d.downMm, step / STEPS),
    }));
  });
  return [...line, points[points.length - 1]];
}
