import type { CardGeometry, Fiducial } from '../card/card-geometry';
import type { PointMm } from '../units';
import { CORNER_NOISE_PX, FIDUCIAL_OUTLIER_MM, INSET_PRIOR_MM, LEAST_FIDUCIALS } from './constants';
import { fitHomography, type PlanePair } from './fit-homography';
import type { FoundFiducial } from './found-fiducial';
import { type Homography, invertHomography, toCard, toImage } from './homography';
import { solveLinear } from './solve-linear';

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

const SIGNS = [[-1, -1], [1, -1], [1, 1], [-1, 1]] as const;

/** Corners of a fiducial on the card, clockwise from its top left, each edge moved inward by `insetMm`. */
export function fiducialCorners(fiducial: Fiducial, insetMm: number): PointMm[] {
  const half = fiducial.sizeMm / 2 - insetMm;
  return SIGNS.map(([sx, sy]) => ({
    acrossMm: fiducial.centre.acrossMm + sx * half,
    downMm: fiducial.centre.downMm + sy * half,
  }));
}

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
    if (!fit) return null;
    const worst = used
      .map((one) => ({ one, offMm: offPlaneMm(one, fit, geometry) }))
      .reduce((a, b) => (b.offMm > a.offMm ? b : a));
    if (worst.offMm <= FIDUCIAL_OUTLIER_MM || used.length === LEAST_FIDUCIALS) return fit;
    used = used.filter((one) => one !== worst.one);
  }
  return null;
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
  for (let round = 0; round < 6; round++) {
    const step = gaussNewtonStep(imageFromCard, insetMm, used, geometry);
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

/** One step over the eight numbers of the map and the inset; the inset is held near zero by its prior. */
function gaussNewtonStep(h: Homography, insetMm: number, used: readonly FoundFiducial[], geometry: CardGeometry): number[] | null {
  const normal = Array.from({ length: 9 }, () => new Array<number>(9).fill(0));
  const right = new Array<number>(9).fill(0);
  const add = (row: readonly number[], residual: number, weight: number) => {
    for (let i = 0; i < 9; i++) {
      right[i] += weight * row[i] * residual;
      for (let j = 0; j < 9; j++) normal[i][j] += weight * row[i] * row[j];
    }
  };
  for (const one of used) {
    const corners = fiducialCorners(designOf(one, geometry), insetMm);
    corners.forEach((card, i) => {
      const { x, y, byX, byY, w } = withDerivatives(h, card);
      const toX = -SIGNS[i][0];
      const toY = -SIGNS[i][1];
      const image = one.cornersPx[i];
      const weight = 1 / CORNER_NOISE_PX ** 2;
      const { acrossMm: a, downMm: d } = card;
      add([a / w, d / w, 1 / w, 0, 0, 0, (-x * a) / w, (-x * d) / w, byX.x * toX + byY.x * toY], image.column - x, weight);
      add([0, 0, 0, a / w, d / w, 1 / w, (-y * a) / w, (-y * d) / w, byX.y * toX + byY.y * toY], image.row - y, weight);
    });
  }
  normal[8][8] += 1 / INSET_PRIOR_MM ** 2;
  right[8] -= insetMm / INSET_PRIOR_MM ** 2;
  return solveScaled(normal, right);
}

/** Solves with rows and columns scaled by the diagonal: the map's numbers differ by five orders of magnitude. */
function solveScaled(normal: number[][], right: number[]): number[] | null {
  const scale = normal.map((row, i) => 1 / Math.sqrt(row[i] || 1));
  const scaled = normal.map((row, i) => row.map((value, j) => value * scale[i] * scale[j]));
  const solution = solveLinear(scaled, right.map((value, i) => value * scale[i]));
  return solution && solution.map((value, i) => value * scale[i]);
}

function withDerivatives(h: Homography, { acrossMm: a, downMm: d }: PointMm) {
  const w = h[6] * a + h[7] * d + h[8];
  const x = (h[0] * a + h[1] * d + h[2]) / w;
  const y = (h[3] * a + h[4] * d + h[5]) / w;
  return {
    x,
    y,
    w,
    byX: { x: (h[0] - x * h[6]) / w, y: (h[3] - y * h[6]) / w },
    byY: { x: (h[1] - x * h[7]) / w, y: (h[4] - y * h[7]) / w },
  };
}

function offPlaneMm(one: FoundFiducial, fit: CardFit, geometry: CardGeometry): number {
  const corners = fiducialCorners(designOf(one, geometry), fit.insetMm);
  const squares = one.cornersPx.map((image, i) => {
    const at = toCard(fit.cardFromImage, image);
    return (at.acrossMm - corners[i].acrossMm) ** 2 + (at.downMm - corners[i].downMm) ** 2;
  });
  return Math.sqrt(squares.reduce((sum, value) => sum + value, 0) / 4);
}

/** Where a card point appears, for checks: `imagePoint(fit, { acrossMm: 0, downMm: 0 })`. */
export const imagePoint = (fit: CardFit, point: PointMm) => toImage(fit.imageFromCard, point);
