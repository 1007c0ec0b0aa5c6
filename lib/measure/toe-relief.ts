import type { PointMm } from '../units';
import { SLICE_MM, TOE_FOLD_SHARE, USUAL_SECTION } from './constants';
import type { ToeCylinder } from './toe-cylinder';
import { fromToeFrame, toToeFrame } from './toe-frame';
import { sectionHeight, sectionHorizon, type ToeSection, sectionShareSeen, sectionWidening } from './toe-section';

/** Where the lens stands: its foot point in the card's frame and its height above the card's plane, mm. */
export interface LensPlace {
  readonly acrossMm: number;
  readonly downMm: number;
  readonly heightMm: number;
}

/** Straight above everything. */
export const OVERHEAD: LensPlace = { acrossMm: 0, downMm: 0, heightMm: Infinity };

/** The toe as a body over the card: a cylinder of one kind of section whose folds lie level with the card. */
export interface ToeRelief {
  readonly cylinder: ToeCylinder;
  readonly lens: LensPlace;
  /** Left out: the usual section. */
  readonly shape?: ToeSection;
}

/**
 * Moves a point from where a leaning camera shows it to where it lies, looked at straight from above.
 *
 * A place z above the card's plane appears farther from the lens's foot point by the factor H / (H − z); the height z is
 * that of a cylinder as wide as the toe's outline. Without this, a camera that leans by 30° moves skin 5 mm down the side
 * of a toe by 3 mm.
 *
 * @param relief the toe's body and the lens
 * @param seen point as it appears in the card's plane, mm
 * @returns the point's orthogonal projection onto the card's plane, mm. What is seen at the toe's outline lies on the body's
 *   horizon, for skin behind it is hidden; what is seen beyond the outline lies as far beyond the horizon
 * Assumes the folds level with the card and the usual section; both are terms of the budget.
 * Source: central projection; JCGM 100:2008, 3.2.4, asks to correct what is known.
 * @example straightenPoint({ cylinder: { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10], centreMm: 40, centreSlope: 0 }, lens: { acrossMm: 40, downMm: 0, heightMm: 250 } }, { acrossMm: 40, downMm: 0 }) // { acrossMm: 40, downMm: 0 }
 */
export function straightenPoint(relief: ToeRelief, seen: PointMm): PointMm {
  const { cylinder, lens, shape = USUAL_SECTION } = relief;
  const at = toToeFrame(seen, cylinder.axis);
  const foot = toToeFrame(lens, cylinder.axis);
  const leanAcross = (at.acrossMm - foot.acrossMm) / lens.heightMm;
  const leanDown = (at.downMm - foot.downMm) / lens.heightMm;
  const { seenCentreMm, centreMm, halfWidthMm } = sectionAt(relief, at.downMm, leanAcross);
  const seenShare = (at.acrossMm - seenCentreMm) / halfWidthMm;
  const share = sectionShareSeen(shape, leanAcross, seenShare);
  const heightMm = halfWidthMm * (sectionHeight(shape, share) - sectionHeight(shape, TOE_FOLD_SHARE));
  // What stands out beyond the body, a swollen fold for one, goes on standing out as far.
  const beyondMm = halfWidthMm * (seenShare - share - leanAcross * sectionHeight(shape, share));
  return fromToeFrame({ acrossMm: centreMm + halfWidthMm * share + beyondMm, downMm: at.downMm - leanDown * heightMm }, cylinder.axis);
}

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
export function facingLens(relief: ToeRelief, flat: PointMm): Facing {
  const { cylinder, lens, shape = USUAL_SECTION } = relief;
  const at = toToeFrame(flat, cylinder.axis);
  const foot = toToeFrame(lens, cylinder.axis);
  const lean = (at.acrossMm - foot.acrossMm) / lens.heightMm;
  const { centreMm, halfWidthMm } = sectionAt(relief, at.downMm, lean);
  const share = (at.acrossMm - centreMm) / halfWidthMm;
  if (Math.abs(share) >= 1) return 'besideToe';
  return share * Math.sign(lean) < sectionHorizon(shape, lean) ? 'seen' : 'hidden';
}

/** Where a toe's section lies and how wide it is. */
export interface PlacedSection {
  /** Middle of the seen outline, and where the body's middle lies straight from above. */
  readonly seenCentreMm: number;
  readonly centreMm: number;
  readonly halfWidthMm: number;
}

/**
 * The true section behind the seen outline. A leaning camera sees it wider, and its middle, which lies below the folds,
 * moved by the lean times that depth.
 *
 * @param relief the toe's body and the lens
 * @param alongMm place along the toe
 * @param lean tangent of the angle of sight across the toe
 * @example sectionAt(relief, 30, 0).halfWidthMm // that of the seen outline
 */
export function sectionAt({ cylinder, lens, shape = USUAL_SECTION }: ToeRelief, alongMm: number, lean: number): PlacedSection {
  const place = Math.min(cylinder.halfWidthsMm.length - 1, Math.max(0, Math.round((alongMm - cylinder.startMm) / SLICE_MM)));
  const asDeepAsTheCard = cylinder.halfWidthsMm[place] / sectionWidening(shape, lean);
  // The widest places lie below the card, farther from the lens, and look smaller than they are.
  const depthShare = sectionHeight(shape, TOE_FOLD_SHARE);
  const halfWidthMm = asDeepAsTheCard * (1 + (asDeepAsTheCard * depthShare) / lens.heightMm);
  const seenCentreMm = cylinder.centreMm + cylinder.centreSlope * (alongMm - cylinder.startMm);
  return { seenCentreMm, centreMm: seenCentreMm + lean * halfWidthMm * depthShare, halfWidthMm };
}
