import type { PointMm, RingMm } from '../units';
import { distanceToLineMm } from './distance-to-line';

/** Marks which points of the open stretch between two kept points must stay. */
function keepBetween(ring: RingMm, first: number, last: number, toleranceMm: number, keep: Uint8Array): void {
  const open: [number, number][] = [[first, last]];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [from, to] = span;
    const chord = [ring[from], ring[to % ring.length]];
    let farthest = -1;
    let distance = toleranceMm;
    for (let index = from + 1; index < to; index += 1) {
      const here = distanceToLineMm(ring[index], chord);
      if (here > distance) {
        distance = here;
        farthest = index;
      }
    }
    if (farthest < 0) continue;
    keep[farthest] = 1;
    open.push([from, farthest], [farthest, to]);
  }
}

/**
 * A ring with fewer points that nowhere leaves the original by more than a tolerance.
 *
 * @param ring closed ring in mm, last point not repeated
 * @param toleranceMm greatest deviation, ≥ 0; 0 only drops points on straight sides
 * @returns a ring of at least three of the original points, or the ring itself where it has three or fewer
 * Source: Douglas and Peucker 1973, started from the first point and the one farthest from it.
 * @example simplifyRing([{ acrossMm: 0, downMm: 0 }, { acrossMm: 1, downMm: 0.01 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 4 }], 0.02).length // 3
 */
export function simplifyRing(ring: RingMm, toleranceMm: number): RingMm {
  if (!(toleranceMm >= 0)) throw new RangeError(`simplifyRing: toleranceMm must be ≥ 0, received ${toleranceMm}`);
  if (ring.length <= 3) return ring;
  const fromFirst = (point: PointMm): number =>
    Math.hypot(point.acrossMm - ring[0].acrossMm, point.downMm - ring[0].downMm);
  const opposite = ring.reduce((best, point, index) => (fromFirst(point) > fromFirst(ring[best]) ? index : best), 0);
  if (opposite === 0) return ring.slice(0, 3);
  const keep = new Uint8Array(ring.length);
  keep[0] = 1;
  keep[opposite] = 1;
  keepBetween(ring, 0, opposite, toleranceMm, keep);
  keepBetween(ring, opposite, ring.length, toleranceMm, keep);
  const kept = ring.filter((_, index) => keep[index] === 1);
  return kept.length >= 3 ? kept : ring;
}
