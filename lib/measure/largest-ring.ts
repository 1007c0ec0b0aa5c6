import type { RingMm } from '../units';
import type { Rings } from './region-area';
import { signedAreaMm2 } from './signed-area';

/**
 * The outer outline of the largest piece of a region.
 *
 * @param rings outlines and holes, mm
 * @returns null where there is no outer outline
 * @example largestRing([{ ring, hole: true }]) // null
 */
export function largestRing(rings: Rings): RingMm | null {
  let largest: RingMm | null = null;
  let areaMm2 = -1;
  for (const { ring, hole } of rings) {
    const one = hole ? -1 : Math.abs(signedAreaMm2(ring));
    if (one > areaMm2) [largest, areaMm2] = [ring, one];
  }
  return largest;
}
