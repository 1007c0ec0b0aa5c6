import { mean } from 'd3-array';
import type { LineMm, RingMm } from '../units';
import type { ToeAxis } from './measure-input';
import { ringCentroid } from './ring-centroid';
import { toToeFrame } from './toe-frame';
import type { LensPlace } from './toe-relief';

/**
 * From which side of the toe, and how far over, the lens looked at the treated fold.
 *
 * @param margin the treated nail-fold margin
 * @param plate outline of the nail plate, which lies on the other side of it
 * @param lens its place above the card
 * @param axis unit vector along the toe
 * @returns degrees across the toe, at the middle of the margin: 0 from straight above, positive where the lens leans over from the
 *   other side, so that the fold turns away from it; null where plate or margin have no middle
 * @example leanOverFoldDeg(margin, plate, { acrossMm: 20, downMm: 20, heightMm: 250 }, { across: 0, down: 1 }) // 5.7
 */
export function leanOverFoldDeg(margin: LineMm, plate: RingMm, lens: LensPlace, axis: ToeAxis): number | null {
  const middle = ringCentroid(plate);
  if (middle === null || margin.length === 0) return null;
  const fold = mean(margin, (point) => toToeFrame(point, axis).acrossMm) ?? NaN;
  const outward = Math.sign(fold - toToeFrame(middle, axis).acrossMm);
  return (Math.atan2(outward * (fold - toToeFrame(lens, axis).acrossMm), lens.heightMm) * 180) / Math.PI;
}
