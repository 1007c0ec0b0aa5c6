import { RADIANS_PER_DEGREE } from './constants';

/**
 * How a camera that leans stretches skin that slopes, after everything was brought to the card's plane.
 *
 * @param slopeDeg angle between skin and card, positive where the skin faces the leaning camera; −90 < it < 90
 * @param viewDeg angle between line of sight and the card's normal, in the plane of the slope; −90 < it < 90
 * @returns length along the slope in the map divided by its true projection onto the card: 1 + tan(slope) · tan(view);
 * 0 or less where the skin is turned away so far that it cannot be seen
 * Source: the foreshortening cos(view − slope) over cos(view) of the card and cos(slope) of the projection.
 * @example obliqueViewFactor(45, 30) // 1.577
 */
export function obliqueViewFactor(slopeDeg: number, viewDeg: number): number {
  return 1 + Math.tan(slopeDeg * RADIANS_PER_DEGREE) * Math.tan(viewDeg * RADIANS_PER_DEGREE);
}
