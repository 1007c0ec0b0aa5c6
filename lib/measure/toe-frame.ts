import type { PointMm } from '../units';
import type { ToeAxis } from './measure-input';

/** The axis of a toe that lies straight in the notch: it comes in from below the card. */
export const CARD_DOWN: ToeAxis = { across: 0, down: 1 };

/**
 * Turns a point into the toe's own frame, where down runs along the toe toward the ankle.
 *
 * @param point on the card, mm
 * @param axis unit vector along the toe
 * @returns acrossMm across the toe, downMm along it; a rotation about the card's origin, so lengths and areas stay
 * @example toToeFrame({ acrossMm: 3, downMm: 4 }, { across: 1, down: 0 }) // { acrossMm: -4, downMm: 3 }
 */
export function toToeFrame(point: PointMm, axis: ToeAxis): PointMm {
  return {
    acrossMm: point.acrossMm * axis.down - point.downMm * axis.across,
    downMm: point.acrossMm * axis.across + point.downMm * axis.down,
  };
}

/**
 * Turns a point of the toe's own frame back into the card's.
 *
 * @param point in the toe's frame, mm
 * @param axis unit vector along the toe
 * @returns the point on the card, mm
 * @example fromToeFrame(toToeFrame({ acrossMm: 3, downMm: 4 }, CARD_DOWN), CARD_DOWN) // { acrossMm: 3, downMm: 4 }
 */
export function fromToeFrame(point: PointMm, axis: ToeAxis): PointMm {
  return {
    acrossMm: point.acrossMm * axis.down + point.downMm * axis.across,
    downMm: point.downMm * axis.down - point.acrossMm * axis.across,
  };
}
