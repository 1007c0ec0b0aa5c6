import { CAP_SHARE } from './constants';

/**
 * Arc length on a circle above a distance from its middle; past the cap it goes on straight with the cap's stretch.
 *
 * @param offsetMm distance from the centre line in the map, mm, either sign
 * @param radiusMm > 0
 * @returns mm along the skin, same sign
 * @throws RangeError where radiusMm is not > 0
 * s = R · asin(d / R), the chord formula d = R · sin(s / R) solved for the arc.
 * @example arcLengthMm(5, 10) // 5.236
 */
export function arcLengthMm(offsetMm: number, radiusMm: number): number {
  if (!(radiusMm > 0)) throw new RangeError(`arcLengthMm: radiusMm must be > 0, received ${radiusMm}`);
  const share = Math.abs(offsetMm) / radiusMm;
  const within = Math.asin(Math.min(share, CAP_SHARE));
  const beyond = Math.max(0, share - CAP_SHARE) / Math.sqrt(1 - CAP_SHARE ** 2);
  return Math.sign(offsetMm) * radiusMm * (within + beyond);
}
