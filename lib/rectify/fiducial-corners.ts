import type { Fiducial } from '../card/card-geometry';
import type { PointMm } from '../units';

/** On which side of its centre each corner lies, across and down, clockwise from the top left. */
export const CORNER_SIGNS = [[-1, -1], [1, -1], [1, 1], [-1, 1]] as const;

/**
 * Corners of a fiducial on the card.
 *
 * @param fiducial its centre and side, mm
 * @param insetMm how far each edge is moved inward; outward is negative
 * @returns four points, clockwise from its top left
 * @example fiducialCorners({ id: 0, centre: { acrossMm: 7.5, downMm: 7.5 }, sizeMm: 9 }, 0)[0] // { acrossMm: 3, downMm: 3 }
 */
export function fiducialCorners(fiducial: Fiducial, insetMm: number): PointMm[] {
  const half = fiducial.sizeMm / 2 - insetMm;
  return CORNER_SIGNS.map(([across, down]) => ({
    acrossMm: fiducial.centre.acrossMm + across * half,
    downMm: fiducial.centre.downMm + down * half,
  }));
}
