import type { PointMm } from '../units';
import { RELIEF_EDGE_SHARE, SLICE_MM, TOE_FLATNESS, TOE_FOLD_SHARE } from './constants';
import type { ToeCylinder } from './toe-cylinder';
import { fromToeFrame, toToeFrame } from './toe-frame';

/** Where the lens stands: its foot point in the card's frame and its height above the card's plane, mm. */
export interface LensPlace {
  readonly acrossMm: number;
  readonly downMm: number;
  readonly heightMm: number;
}

/** The toe as a body over the card: an elliptic cylinder whose folds lie level with the card. */
export interface ToeRelief {
  readonly cylinder: ToeCylinder;
  readonly lens: LensPlace;
}

/**
 * Moves a point from where a leaning camera shows it to where it lies, looked at straight from above.
 *
 * A place z above the card's plane appears farther from the lens's foot point by the factor H / (H − z); the height z is
 * that of an elliptic cylinder as wide as the toe's outline. Without this, a camera that leans by 30° moves skin 5 mm
 * down the side of a toe by 3 mm.
 *
 * @param relief the toe's body and the lens
 * @param seen point as it appears in the card's plane, mm
 * @returns the point's orthogonal projection onto the card's plane, mm; near the toe's outline, where the skin is seen
 *   edge-on, as far as can be told
 * Assumes the folds level with the card and the section 0.8 times as high as wide; both are terms of the budget.
 * Source: central projection; JCGM 100:2008, 3.2.4, asks to correct what is known.
 * @example straightenPoint({ cylinder: { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10], centreMm: 40, centreSlope: 0 }, lens: { acrossMm: 40, downMm: 0, heightMm: 250 } }, { acrossMm: 40, downMm: 0 }) // { acrossMm: 40, downMm: 0 }
 */
export function straightenPoint(relief: ToeRelief, seen: PointMm): PointMm {
  const { cylinder, lens } = relief;
  const at = toToeFrame(seen, cylinder.axis);
  const foot = toToeFrame(lens, cylinder.axis);
  const leanAcross = (at.acrossMm - foot.acrossMm) / lens.heightMm;
  const leanDown = (at.downMm - foot.downMm) / lens.heightMm;
  const section = sectionAt(cylinder, at.downMm, leanAcross);
  let across = at.acrossMm;
  let heightMm = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    heightMm = heightOver(section, across);
    across += DAMPING * (at.acrossMm - leanAcross * heightMm - across);
  }
  return fromToeFrame({ acrossMm: across, downMm: at.downMm - leanDown * heightMm }, cylinder.axis);
}

const ROUNDS = 24;
const DAMPING = 0.5;

/** How a place of the toe stands to the lens. */
export type Facing = 'seen' | 'hidden' | 'besideToe';

/**
 * Is the skin at a place turned toward the lens, or does the toe itself hide it?
 *
 * @param relief the toe's body and the lens
 * @param flat the place, looked at straight from above, mm
 * @returns seen where the line of sight makes less than a right angle with the surface's normal
 * @example facingLens({ cylinder: { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10], centreMm: 40, centreSlope: 0 }, lens: { acrossMm: 40, downMm: 0, heightMm: 250 } }, { acrossMm: 47, downMm: 0 }) // 'seen'
 */
export function facingLens({ cylinder, lens }: ToeRelief, flat: PointMm): Facing {
  const at = toToeFrame(flat, cylinder.axis);
  const foot = toToeFrame(lens, cylinder.axis);
  const lean = (at.acrossMm - foot.acrossMm) / lens.heightMm;
  const { centreMm, halfWidthMm } = sectionAt(cylinder, at.downMm, lean);
  const share = (at.acrossMm - centreMm) / halfWidthMm;
  if (Math.abs(share) >= 1) return 'besideToe';
  // Normal of the ellipse z = k·W·√(1 − s²): (k·s / √(1 − s²), 1); the line of sight: (−lean, 1).
  return 1 - lean * ((TOE_FLATNESS * share) / Math.sqrt(1 - share ** 2)) > 0 ? 'seen' : 'hidden';
}

interface Section {
  readonly centreMm: number;
  readonly halfWidthMm: number;
}

/**
 * The true section behind the seen outline. A leaning camera sees an ellipse of half axes W and k·W as wide as
 * √(W² + k²·W²·t²), and its middle, which lies below the folds, moved by t times that depth.
 */
function sectionAt(cylinder: ToeCylinder, alongMm: number, lean: number): Section {
  const place = Math.min(cylinder.halfWidthsMm.length - 1, Math.max(0, Math.round((alongMm - cylinder.startMm) / SLICE_MM)));
  const halfWidthMm = cylinder.halfWidthsMm[place] / Math.hypot(1, TOE_FLATNESS * lean);
  const seenCentre = cylinder.centreMm + cylinder.centreSlope * (alongMm - cylinder.startMm);
  const depthMm = TOE_FLATNESS * halfWidthMm * Math.sqrt(1 - TOE_FOLD_SHARE ** 2);
  return { centreMm: seenCentre + lean * depthMm, halfWidthMm };
}

/** Height above the folds' level. */
function heightOver({ centreMm, halfWidthMm }: Section, acrossMm: number): number {
  const share = Math.min(RELIEF_EDGE_SHARE, Math.abs(acrossMm - centreMm) / halfWidthMm);
  return TOE_FLATNESS * halfWidthMm * (Math.sqrt(1 - share ** 2) - Math.sqrt(1 - TOE_FOLD_SHARE ** 2));
}
