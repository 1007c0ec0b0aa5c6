import type { PointMm, RingMm } from '../units';
import { signedAreaMm2 } from './signed-area';

/**
 * Centre of area of a closed ring.
 *
 * @param ring closed ring in mm, last point not repeated
 * @returns the centroid, or null where the ring encloses no area
 * Source: Bourke 1988, centroid of a polygon; taken relative to the first point for precision.
 * @example ringCentroid([{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 3 }]).acrossMm // 1
 */
export function ringCentroid(ring: RingMm): PointMm | null {
  const area = signedAreaMm2(ring);
  if (area === 0) return null;
  const origin = ring[0];
  let across = 0;
  let down = 0;
  for (let index = 0; index < ring.length; index += 1) {
    const here = ring[index];
    const next = ring[(index + 1) % ring.length];
    const hereAcross = here.acrossMm - origin.acrossMm;
    const hereDown = here.downMm - origin.downMm;
    const nextAcross = next.acrossMm - origin.acrossMm;
    const nextDown = next.downMm - origin.downMm;
    // The triangle of the first point and this side: its area, and a third of its corners' sum as its centre.
    const triangleMm2 = (hereAcross * nextDown - nextAcross * hereDown) / 2;
    across += ((hereAcross + nextAcross) / 3) * triangleMm2;
    down += ((hereDown + nextDown) / 3) * triangleMm2;
  }
  return { acrossMm: origin.acrossMm + across / area, downMm: origin.downMm + down / area };
}
