import {
  DEFAULT_DISTANCE_MM,
  DEFAULT_DISTANCE_RELATIVE_U,
  FIDUCIAL_LEVER_MM,
  LENS_RELATIVE_U,
  NAIL_HEIGHT_U_MM,
} from './constants';
import type { BudgetTerm } from './combine-budget';
import { heightScaleError } from './height-scale-error';
import type { ScaleFacts } from './measure-input';

/** Lengths follow an error of scale once, areas twice: both of their sides are stretched by the same error. */
export type Dimension = 'length' | 'area';

/**
 * The influences that stretch or squeeze the map, as budget terms of one length or area.
 *
 * @param scale what is known of print, pose and fiducials
 * @param value the length (mm) or area (mm²; or a load per area times mm²) that they act on
 * @param dimension how often a stretch counts
 * @returns terms printScale, homographyResidual, nailHeight, lensDistortion
 * The height's mean is taken as zero, so with an uncertain distance D the variance of h / D is
 * u(h)² · E[1/D²] ≈ (u(h) / D)² · (1 + u_rel(D)²). Source: JCGM 100:2008, 5.1; geometry as in the functions used.
 * @example scaleTerms({ printRelativeU: 0.005, tiltDeg: 0, distanceMm: 250, distanceRelativeU: 0, homographyResidualMm: 0, pxPerMm: 12 }, 100, 'area')[0].sensitivity // 200
 */
export function scaleTerms(scale: ScaleFacts, value: number, dimension: Dimension): BudgetTerm[] {
  const stretch = value * (dimension === 'area' ? 2 : 1);
  const distanceMm = scale.distanceMm ?? DEFAULT_DISTANCE_MM;
  const distanceRelativeU = scale.distanceMm === null ? DEFAULT_DISTANCE_RELATIVE_U : scale.distanceRelativeU;
  const height = heightScaleError(NAIL_HEIGHT_U_MM, distanceMm) * Math.hypot(1, distanceRelativeU);
  return [
    { name: 'printScale', u: scale.printRelativeU, sensitivity: stretch },
    { name: 'homographyResidual', u: scale.homographyResidualMm / FIDUCIAL_LEVER_MM, sensitivity: stretch },
    { name: 'nailHeight', u: height, sensitivity: stretch },
    { name: 'lensDistortion', u: LENS_RELATIVE_U, sensitivity: stretch },
  ];
}
