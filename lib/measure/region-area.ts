import type { Region } from '../segment/segmentation';
import { signedAreaMm2 } from './signed-area';

/** What the geometry needs of a region: its rings, each an outer edge or a hole. */
export type Rings = Region['rings'];

/**
 * Area of a region: its outer rings less its holes, whichever way round each ring is written.
 *
 * @param rings rings in mm; a hole lies inside an outer ring and holes do not overlap
 * @returns mm²; 0 for no rings, which a caller must turn into a reason
 * @example regionAreaMm2([{ hole: false, ring: [{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 4 }] }]) // 6
 */
export function regionAreaMm2(rings: Rings): number {
  return rings.reduce((sum, { ring, hole }) => sum + (hole ? -1 : 1) * Math.abs(signedAreaMm2(ring)), 0);
}
