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
    const cross = hereAcross * nextDown - nextAcross * hereDown;
    across += (hereAcross + nextAcross) * cross;
    down += (hereDown + nextDown) * cross;
  }
  return { acrossMm: origin.acrossMm + across / (6 * area), downMm: origin.downMm + down / (6 * area) };
}
