import type { CardGeometry } from '../card/card-geometry';
import type { UprightPhoto } from '../photo/upright-photo';
import type { Homography } from '../rectify/homography';
import type { PatchReading } from './card-readings';
import { PRINT_EDGE_MARGIN_MM } from './constants';
import { readSpot } from './read-spot';

/**
 * Every patch of the card as the photo shows it, without the patch's edge.
 *
 * @param photo the upright photo
 * @param imageFromCard the card's plane
 * @param geometry the card
 * @returns one reading per patch, in the card's order; patches that reach outside the photo are left out
 * @example readPatches(photo, fit.imageFromCard, OWN_CARD)[0].patch.name // 'ramp1'
 */
export function readPatches(photo: UprightPhoto, imageFromCard: Homography, geometry: CardGeometry): PatchReading[] {
  return geometry.patches.flatMap((patch) => {
    const size = { acrossMm: patch.widthMm - 2 * PRINT_EDGE_MARGIN_MM, downMm: patch.heightMm - 2 * PRINT_EDGE_MARGIN_MM };
    const reading = readSpot(photo, imageFromCard, patch.centre, size);
    return reading ? [{ patch, ...reading }] : [];
  });
}
