import type { PointMm } from '../units';
import { largestRing } from './largest-ring';
import type { Rings } from './region-area';
import { ringCentroid } from './ring-centroid';
import { fitToeCylinder } from './toe-cylinder';
import { CARD_DOWN } from './toe-frame';

/** Where a toe lies on the card: it never lies in the notch twice in the same way. */
export interface ToePlace {
  /** The middle of the nail plate, which stays on the toe from visit to visit. */
  readonly middle: PointMm;
  /** How far the toe's axis is turned from the card's down, degrees; positive with its ankle to the right. */
  readonly turnDeg: number;
}

const DEGREES = 180 / Math.PI;

/**
 * The place of a toe from its outlines.
 *
 * @param nailPlate straightened outline of the plate
 * @param toe outline of the toe
 * @returns null where either is missing
 * @example toePlace([], []) // null
 */
export function toePlace(nailPlate: Rings, toe: Rings): ToePlace | null {
  const plate = largestRing(nailPlate);
  const cylinder = fitToeCylinder(toe, CARD_DOWN);
  const middle = plate === null ? null : ringCentroid(plate);
  return middle && cylinder && { middle, turnDeg: Math.atan(cylinder.centreSlope) * DEGREES };
}

/**
 * Moves a point with the toe: from its place on one photo to its place on another.
 *
 * @param from where the toe lies on the photo that the point is of
 * @param to where it lies on the other
 * @param point on the card, mm
 * @returns the same place of the toe on the other photo's card, mm
 * @example moveWithToe({ middle: { acrossMm: 40, downMm: 30 }, turnDeg: 0 }, { middle: { acrossMm: 42, downMm: 31 }, turnDeg: 0 }, { acrossMm: 45, downMm: 35 }) // { acrossMm: 47, downMm: 36 }
 */
export function moveWithToe(from: ToePlace, to: ToePlace, point: PointMm): PointMm {
  // Its ankle turns to the right where down turns toward across.
  const turn = (from.turnDeg - to.turnDeg) / DEGREES;
  const [across, down] = [point.acrossMm - from.middle.acrossMm, point.downMm - from.middle.downMm];
  return {
    acrossMm: to.middle.acrossMm + across * Math.cos(turn) - down * Math.sin(turn),
    downMm: to.middle.downMm + across * Math.sin(turn) + down * Math.cos(turn),
  };
}
