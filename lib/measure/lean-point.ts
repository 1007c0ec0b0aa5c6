import type { PointMm } from '../units';
import { straightenPoint, type ToeRelief } from './toe-relief';

/**
 * Moves a point from where it lies, looked at straight from above, to where a leaning camera shows it: the way back from
 * `straightenPoint`, for lines of one photo that are drawn over another.
 *
 * @param relief the toe's body and the lens of the photo that is drawn upon
 * @param flat the point's orthogonal projection onto the card's plane, mm
 * @returns the point as it appears in the card's plane, mm
 * Found by steps against the remaining error; skin moves by a part of its height only, so that they close in.
 * @example leanPoint({ cylinder: { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10], centreMm: 40, centreSlope: 0 }, lens: { acrossMm: 40, downMm: 0, heightMm: 250 } }, { acrossMm: 40, downMm: 0 }) // { acrossMm: 40, downMm: 0 }
 */
export function leanPoint(relief: ToeRelief, flat: PointMm): PointMm {
  let seen = flat;
  for (let round = 0; round < ROUNDS; round += 1) {
    const back = straightenPoint(relief, seen);
    seen = { acrossMm: seen.acrossMm + DAMPING * (flat.acrossMm - back.acrossMm), downMm: seen.downMm + DAMPING * (flat.downMm - back.downMm) };
  }
  return seen;
}

const ROUNDS = 30;
const DAMPING = 0.7;
