import type { RingMm } from '../units';

/**
 * Signed area of a closed ring by the shoelace formula.
 *
 * @param ring closed ring in mm, last point not repeated; fewer than three points enclose nothing
 * @returns mm², positive where the ring turns from +across toward +down (clockwise on the page)
 * Coordinates are taken relative to the first point, so a ring far from the origin loses no digits. A ring
 * that crosses itself gives the sum of its signed loops. Source: Meister 1769, the shoelace formula.
 * @example signedAreaMm2([{ acrossMm: 0, downMm: 0 }, { acrossMm: 2, downMm: 0 }, { acrossMm: 0, downMm: 2 }]) // 2
 */
export function signedAreaMm2(ring: RingMm): number {
  if (ring.length < 3) return 0;
  const origin = ring[0];
  let doubled = 0;
  for (let index = 0; index < ring.length; index += 1) {
    const here = ring[index];
    const next = ring[(index + 1) % ring.length];
    doubled +=
      (here.acrossMm - origin.acrossMm) * (next.downMm - origin.downMm) -
      (next.acrossMm - origin.acrossMm) * (here.downMm - origin.downMm);
  }
  return doubled / 2;
}
