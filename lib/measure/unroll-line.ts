import type { LineMm, PointMm } from '../units';
import { CAP_SHARE, USUAL_SECTION } from './constants';
import { toToeFrame } from './toe-frame';
import { sectionAt, type ToeRelief } from './toe-relief';
import { sectionArc } from './toe-section';

/**
 * Lays a line that was drawn on the map out on the flat skin of the toe.
 *
 * @param line points straight from above, mm, closely spaced (a long straight side would unroll to a straight side)
 * @param relief the toe's body, and the lens that its outline was seen by
 * @returns acrossMm is arc length from the middle of the toe, downMm position along it; areas and lengths are the skin's. Past the
 *   cap it goes on with the cap's stretch
 * @example unrollLine([{ acrossMm: 4, downMm: 3 }], { cylinder: { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10], centreMm: 4, centreSlope: 0 }, lens: OVERHEAD })[0].acrossMm // 0
 */
export function unrollLine(line: LineMm, relief: ToeRelief): PointMm[] {
  const { shape = USUAL_SECTION } = relief;
  const capArc = sectionArc(shape, CAP_SHARE);
  const capStretch = (sectionArc(shape, CAP_SHARE + CAP_STEP) - capArc) / CAP_STEP;
  return placesOf(line, relief).map(({ share, alongMm, halfWidthMm }) => {
    const over = Math.max(0, Math.abs(share) - CAP_SHARE);
    const arc = over > 0 ? Math.sign(share) * (capArc + over * capStretch) : sectionArc(shape, share);
    return { acrossMm: halfWidthMm * arc, downMm: alongMm };
  });
}

const CAP_STEP = 1e-3;

/**
 * The same line in the toe's frame, still projected, but kept from going past the cap.
 *
 * @param line points straight from above, mm
 * @param relief the toe's body and the lens
 * @returns acrossMm is distance from the middle, at most CAP_SHARE of the half width
 * @example holdAtCap([{ acrossMm: 40, downMm: 3 }], relief)[0].acrossMm // 9.7 on a toe of half width 10
 */
export function holdAtCap(line: LineMm, relief: ToeRelief): PointMm[] {
  return placesOf(line, relief).map(({ share, alongMm, halfWidthMm }) => ({
    acrossMm: halfWidthMm * Math.min(CAP_SHARE, Math.max(-CAP_SHARE, share)),
    downMm: alongMm,
  }));
}

interface PlaceOnToe {
  /** Distance from the middle in half widths, either sign. */
  readonly share: number;
  readonly alongMm: number;
  readonly halfWidthMm: number;
}

function placesOf(line: LineMm, relief: ToeRelief): PlaceOnToe[] {
  const { cylinder, lens } = relief;
  const foot = toToeFrame(lens, cylinder.axis);
  return line.map((point) => {
    const at = toToeFrame(point, cylinder.axis);
    const { centreMm, halfWidthMm } = sectionAt(relief, at.downMm, (at.acrossMm - foot.acrossMm) / lens.heightMm);
    return { share: (at.acrossMm - centreMm) / halfWidthMm, alongMm: at.downMm, halfWidthMm };
  });
}
