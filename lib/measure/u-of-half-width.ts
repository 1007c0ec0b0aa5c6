/** How likely the places between the limits are. */
export type Spread = 'rectangular' | 'triangular' | 'arcsine';

const SQUARED_DIVISOR: Readonly<Record<Spread, number>> = { rectangular: 3, triangular: 6, arcsine: 2 };

/**
 * Standard uncertainty of something known only to lie within ± a half width.
 *
 * @param halfWidth half of the distance between the limits, ≥ 0, any unit
 * @param spread the assumed distribution
 * @returns standard uncertainty in the unit of halfWidth
 * @throws RangeError where halfWidth is negative or not finite
 * Source: JCGM 100:2008, 4.3.7 and 4.3.9; arcsine from H.1.3.4.
 * @example uOfHalfWidth(1, 'rectangular') // 0.577
 */
export function uOfHalfWidth(halfWidth: number, spread: Spread): number {
  if (!(halfWidth >= 0) || !Number.isFinite(halfWidth)) {
    throw new RangeError(`uOfHalfWidth: halfWidth must be ≥ 0, received ${halfWidth}`);
  }
  return halfWidth / Math.sqrt(SQUARED_DIVISOR[spread]);
}
