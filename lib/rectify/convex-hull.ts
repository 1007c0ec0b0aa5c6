import type { PointMm } from '../units';

/**
 * Area of the convex hull of some points (Andrew 1979, monotone chain).
 *
 * @returns mm², 0 with fewer than three points
 * @example convexHullAreaMm2(fourCornersOfAUnitSquare) // 1
 */
export function convexHullAreaMm2(points: readonly PointMm[]): number {
  const sorted = [...points].sort((a, b) => a.acrossMm - b.acrossMm || a.downMm - b.downMm);
  const hull = [...halfHull(sorted), ...halfHull(sorted.reverse())];
  let twice = 0;
  hull.forEach((p, i) => {
    const q = hull[(i + 1) % hull.length];
    twice += p.acrossMm * q.downMm - q.acrossMm * p.downMm;
  });
  return Math.abs(twice) / 2;
}

function halfHull(sorted: readonly PointMm[]): PointMm[] {
  const chain: PointMm[] = [];
  for (const point of sorted) {
    while (chain.length >= 2 && turn(chain[chain.length - 2], chain[chain.length - 1], point) <= 0) chain.pop();
    chain.push(point);
  }
  return chain.slice(0, -1);
}

function turn(a: PointMm, b: PointMm, c: PointMm): number {
  return (b.acrossMm - a.acrossMm) * (c.downMm - a.downMm) - (b.downMm - a.downMm) * (c.acrossMm - a.acrossMm);
}
