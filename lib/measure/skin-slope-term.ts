import type { BudgetTerm } from './combine-budget';
import { RANDOM_AZIMUTH_RMS, SKIN_SLOPE_U_DEG } from './constants';
import type { ScaleFacts } from './measure-input';
import { obliqueViewFactor } from './oblique-view-factor';

/**
 * What a leaning camera does to skin that slopes: it stretches or squeezes one direction of the map.
 *
 * @param scale for the tilt
 * @param value length or area that it acts on; one direction only, so an area follows it once, not twice
 * @returns one term, skinSlope, in the unit of value
 * Example: `skinSlopeTerm({ printRelativeU: 0.005, tiltDeg: 0, distanceMm: 250, distanceRelativeU: 0, homographyResidualMm: 0, pxPerMm: 12 }, 100).u` is 0.
 */
export function skinSlopeTerm(scale: ScaleFacts, value: number): BudgetTerm {
  const stretch = obliqueViewFactor(SKIN_SLOPE_U_DEG, scale.tiltDeg) - 1;
  return { name: 'skinSlope', u: stretch * RANDOM_AZIMUTH_RMS, sensitivity: value };
}
