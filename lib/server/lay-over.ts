import { leanPoint } from '../measure/lean-point';
import { moveWithToe, type ToePlace } from '../measure/toe-place';
import type { ToeRelief } from '../measure/toe-relief';
import type { Homography } from '../rectify/homography';
import { type LinePlaces, linePlaces } from '../report/line-places';
import { type PenLine, penLines, type PlaceOn } from '../report/pen-lines';
import type { FlatLines } from './shown-episode';

/** How one photo shows its toe: where it lies on the card, and from where the camera looks. */
export interface Stand {
  readonly place: ToePlace | null;
  readonly relief: ToeRelief | null;
}

/**
 * Lines of one photo as they would show on another: straight from above, moved with the toe from its place on the first
 * card to that on the second, then as the second camera leans. Runs in the browser too.
 */
export function layOver(flat: FlatLines, from: Stand, to: Stand): { lines: PenLine[]; dateAt: LinePlaces['dateAt'] } {
  const placeOn: PlaceOn = ([acrossMm, downMm]) => {
    const moved = from.place && to.place ? moveWithToe(from.place, to.place, { acrossMm, downMm }) : { acrossMm, downMm };
    const shown = to.relief ? leanPoint(to.relief, moved) : moved;
    return [shown.acrossMm, shown.downMm];
  };
  const { dateAt } = linePlaces(flat);
  return { lines: penLines(flat, placeOn), dateAt: dateAt && placeOn(dateAt) };
}

/** The card of one photo → the card of another, so that the toe lies in the same place: a turn and a shift. */
export function toeToToe(from: ToePlace, to: ToePlace): Homography {
  const [origin, across, down] = [[0, 0], [1, 0], [0, 1]].map(([acrossMm, downMm]) => moveWithToe(from, to, { acrossMm, downMm }));
  return [across.acrossMm - origin.acrossMm, down.acrossMm - origin.acrossMm, origin.acrossMm, across.downMm - origin.downMm, down.downMm - origin.downMm, origin.downMm, 0, 0, 1];
}
