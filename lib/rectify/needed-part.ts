import type { CardGeometry } from '../card/card-geometry';
import type { PartPx } from '../photo/part-of';
import type { PointMm } from '../units';
import { QUICK_MAY_MISS } from './constants';
import { fiducialCorners } from './fiducial-corners';
import type { CardLook } from './find-card';
import { fitHomography, type PlanePair } from './fit-homography';
import { toPhoto } from './grey-image';
import { toImage } from './homography';
import { toeGrid } from './toe-grid';

/** Corners in a small copy are off by a pixel or two of it, a quarter of a millimetre; the rest is for a card that is bent. */
const MARGIN_MM = 4;

/**
 * The part of a photo that measuring reads: the card and the millimetre map, with a margin.
 *
 * @param look a look at a small copy of the whole photo
 * @param geometry the card looked for
 * @returns the part, pixels of the photo; null where the look did not show enough of the card
 * @example neededPart(quickLook(copy, OWN_CARD, detect), OWN_CARD) // { left: 1465, top: 1056, widthPx: 1123, heightPx: 932 }
 */
export function neededPart(look: CardLook, geometry: CardGeometry): PartPx | null {
  const { image } = look;
  const pairs = pairsIn(look, geometry);
  if (pairs.length < fiducialCorners(geometry.fiducials[0], 0).length * (geometry.fiducials.length - QUICK_MAY_MISS)) return null;
  const imageFromCard = fitHomography(pairs);
  if (!imageFromCard) return null;
  const corners = readCorners(geometry).map((point) => toImage(imageFromCard, point));
  const across = spanOf(corners.map(({ column }) => column), image.widthPx * image.shrink);
  const down = spanOf(corners.map(({ row }) => row), image.heightPx * image.shrink);
  // Also where the plane is so askew that a corner has no place.
  if (!(across.lengthPx > 0 && down.lengthPx > 0)) return null;
  return { left: across.from, top: down.from, widthPx: across.lengthPx, heightPx: down.lengthPx };
}

function pairsIn({ image, fiducials }: CardLook, geometry: CardGeometry): PlanePair[] {
  return fiducials.flatMap((one) => {
    const design = geometry.fiducials.find((f) => f.id === one.id);
    return design ? fiducialCorners(design, 0).map((card, i) => ({ card, image: toPhoto(image, one.cornersPx[i]) })) : [];
  });
}

/** Corners of a rectangle around card and map, with the margin. */
function readCorners(geometry: CardGeometry): PointMm[] {
  const grid = toeGrid(geometry);
  const left = Math.min(0, grid.originAcrossMm) - MARGIN_MM;
  const right = Math.max(geometry.widthMm, grid.originAcrossMm + grid.widthPx / grid.pxPerMm) + MARGIN_MM;
  const top = Math.min(0, grid.originDownMm) - MARGIN_MM;
  const bottom = Math.max(geometry.heightMm, grid.originDownMm + grid.heightPx / grid.pxPerMm) + MARGIN_MM;
  return [left, right].flatMap((acrossMm) => [top, bottom].map((downMm) => ({ acrossMm, downMm })));
}

/** From the first to the last place within a side of the photo. */
function spanOf(places: readonly number[], sidePx: number): { from: number; lengthPx: number } {
  const from = Math.max(0, Math.floor(Math.min(...places)));
  return { from, lengthPx: Math.min(sidePx, Math.ceil(Math.max(...places)) + 1) - from };
}
