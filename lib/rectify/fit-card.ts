import type { CardGeometry, Fiducial } from '../card/card-geometry';
import { cardPlaneStep } from './card-plane-step';
import { FIDUCIAL_OUTLIER_MM, LEAST_FIDUCIALS, QUIET_RESIDUAL_MM } from './constants';
import { fiducialCorners } from './fiducial-corners';
import { fitHomography, type PlanePair } from './fit-homography';
import type { FoundFiducial } from './found-fiducial';
import { type Homography, invertHomography, toCard } from './homography';

/** The card's plane as seen in one photo. */
export interface CardFit {
  readonly imageFromCard: Homography;
  readonly cardFromImage: Homography;
  readonly used: readonly FoundFiducial[];
  /** How far each printed edge seems to lie inside its design (ink, thresholding, blur), mm; outward is negative. */
  readonly insetMm: number;
  /** Root mean square distance of the corners from their design, mm. */
  readonly residualMm: number;
}

/** So many times smaller is the residual of a plane that one stray fiducial had spoilt (ours). */
const FAR_BETTER = 2;

/**
 * One homography over all corners of all fiducials, together with one inset shared by every edge: scale then comes
 * from the pitch between fiducials and not from their sides, which ink and blur move. A fiducial that does not fit
 * the common plane is left out and the rest fitted again.
 *
 * @param found fiducials with fine corners, photo pixels; ids that are not on the card are ignored
 * @param geometry the card
 * @returns the fit, or null with fewer than four usable fiducials
 * @example fitCard(found, geometry)?.residualMm // 0.03
 */
export function fitCard(found: readonly FoundFiducial[], geometry: CardGeometry): CardFit | null {
  let used = found.filter((one) => geometry.fiducials.some((f) => f.id === one.id));
  while (used.length >= LEAST_FIDUCIALS) {
    const fit = fitOnce(used, geometry);
    if (!fit || used.length === LEAST_FIDUCIALS || fit.residualMm < QUIET_RESIDUAL_MM) return fit;
    const rest = withoutOne(used, geometry);
    if (!rest || !isBetterWithout(rest, fit, geometry)) return fit;
    used = [...rest.used];
  }
  return null;
}

/** The fit without the fiducial whose absence makes the rest agree best. */
function withoutOne(used: readonly FoundFiducial[], geometry: CardGeometry): CardFit | null {
  const fits = used.map((left) => fitOnce(used.filter((one) => one !== left), geometry)).filter((fit) => fit !== null);
  return fits.length === 0 ? null : fits.reduce((a, b) => (b.residualMm < a.residualMm ? b : a));
}

/**
 * A fiducial at the card's corner pulls the plane along: moved by 2 mm it lies only some tenths of a millimetre off the
 * common fit, and its neighbour looks guilty. So it is judged by the fit of the others, and counts as the one that
 * disagrees only where they agree far better without it: a bent card or a wide lens is nobody's single fault.
 */
function isBetterWithout(rest: CardFit, fit: CardFit, geometry: CardGeometry): boolean {
  if (fit.used.some((one) => offPlaneMm(one, fit, geometry) > FIDUCIAL_OUTLIER_MM)) return true;
  const left = fit.used.filter((one) => !rest.used.includes(one));
  const isFarOff = left.some((one) => offPlaneMm(one, rest, geometry) > FIDUCIAL_OUTLIER_MM);
  return isFarOff && rest.residualMm < fit.residualMm / FAR_BETTER;
}

function designOf(found: FoundFiducial, geometry: CardGeometry): Fiducial {
  return geometry.fiducials.find((f) => f.id === found.id) as Fiducial;
}

function pairsOf(found: readonly FoundFiducial[], geometry: CardGeometry, insetMm: number): PlanePair[] {
  return found.flatMap((one) => fiducialCorners(designOf(one, geometry), insetMm).map((card, i) => ({ card, image: one.cornersPx[i] })));
}

function fitOnce(used: readonly FoundFiducial[], geometry: CardGeometry): CardFit | null {
  let imageFromCard = fitHomography(pairsOf(used, geometry, 0));
  if (!imageFromCard) return null;
  let insetMm = 0;
  const seen = used.map((one) => ({ design: designOf(one, geometry), cornersPx: one.cornersPx }));
  for (let round = 0; round < 6; round++) {
    const step = cardPlaneStep(imageFromCard, insetMm, seen);
    if (!step) return null;
    imageFromCard = [...imageFromCard.slice(0, 8).map((value, i) => value + step[i]), 1] as unknown as Homography;
    insetMm += step[8];
  }
  const cardFromImage = invertHomography(imageFromCard);
  const pairs = pairsOf(used, geometry, insetMm);
  const squares = pairs.map(({ card, image }) => {
    const at = toCard(cardFromImage, image);
    return (at.acrossMm - card.acrossMm) ** 2 + (at.downMm - card.downMm) ** 2;
  });
  const residualMm = Math.sqrt(squares.reduce((sum, one) => sum + one, 0) / squares.length);
  return { imageFromCard, cardFromImage, used, insetMm, residualMm };
}

function offPlaneMm(one: FoundFiducial, fit: CardFit, geometry: CardGeometry): number {
  const corners = fiducialCorners(designOf(one, geometry), fit.insetMm);
  const squares = one.cornersPx.map((image, i) => {
    const at = toCard(fit.cardFromImage, image);
    return (at.acrossMm - corners[i].acrossMm) ** 2 + (at.downMm - corners[i].downMm) ** 2;
  });
  return Math.sqrt(squares.reduce((sum, value) => sum + value, 0) / 4);
}
