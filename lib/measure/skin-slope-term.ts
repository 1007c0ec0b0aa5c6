import type { BudgetTerm } from './combine-budget';
import { RANDOM_AZIMUTH_RMS, SKIN_SLOPE_U_DEG } from './constants';
import type { ScaleFacts } from './measure-input';
import { obliqueViewFactor } from './oblique-view-factor';
import type { Dimension } from './scale-terms';

/**
 * What a leaning camera does to skin that slopes: places at other heights move the way the camera leans.
 *
 * @param scale for the tilt
 * @param value length (mm), or area (mm², or a load per area times mm²), that it acts on
 * @param dimension a length feels the part of lean and slope that lies along it; an area feels both directions
 * @returns one term, skinSlope, in the unit of value
 * With slopes gx, gy and lean tx, ty a point moves by (gx·x + gy·y)·(tx, ty). An area changes by gx·tx + gy·ty,
 * variance g²·tan²; a length by one of the two products, variance g²·tan² / 2, for a lean in a random direction.
 * @example skinSlopeTerm({ printRelativeU: 0.005, tiltDeg: 0, distanceMm: 250, distanceRelativeU: 0, homographyResidualMm: 0, pxPerMm: 12 }, 100, 'area').u // 0
 */
export function skinSlopeTerm(scale: ScaleFacts, value: number, dimension: Dimension): BudgetTerm {
  const stretch = obliqueViewFactor(SKIN_SLOPE_U_DEG, scale.tiltDeg) - 1;
  return { name: 'skinSlope', u: stretch * (dimension === 'length' ? RANDOM_AZIMUTH_RMS : 1), sensitivity: value };
}
