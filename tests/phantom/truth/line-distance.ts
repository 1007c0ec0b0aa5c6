/** Distances to a line of points, all in mm of the card's frame. */
import type { LineOfPairs, PairMm } from '../phantom-truth';

/** From a point to the nearest place on the line. */
export function distanceToLineMm([x, y]: PairMm, line: LineOfPairs): number {
  let least = Infinity;
  for (let i = 1; i < line.length; i++) {
    const [ax, ay] = line[i - 1];
    const [bx, by] = line[i];
    const ex = bx - ax, ey = by - ay;
    const along = Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey || 1)));
    least = Math.min(least, Math.hypot(x - ax - along * ex, y - ay - along * ey));
  }
  return least;
}

/** Points along closed rings, no more than `stepMm` apart. */
export function denseRing(ring: LineOfPairs, stepMm: number): PairMm[] {
  return ring.flatMap((from, i) => {
    const to = ring[(i + 1) % ring.length];
    const count = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / stepMm));
    return Array.from({ length: count }, (_, k): PairMm => [from[0] + ((to[0] - from[0]) * k) / count, from[1] + ((to[1] - from[1]) * k) / count]);
  });
}
