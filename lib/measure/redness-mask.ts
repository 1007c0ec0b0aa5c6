import type { MapGrid } from '../rectify/millimetre-map';
import type { Outlines } from './measure-input';
import { regionMask } from './region-mask';

/**
 * Which pixels redness is taken from: the region and a rim around it, without plate, raw and macerated surface.
 *
 * @param outlines of the photo; no erythema gives an empty mask
 * @param grid the map of the redness planes
 * @param rimMm width of the rim, mm, ≥ 0
 * @returns 1 where redness is taken, row by row
 * A rim would otherwise cross the margin onto the nail. What lies bare in the groove and is in none of these
 * outlines has to be NaN in the planes.
 * @example rednessMask({ erythema: null, nailPlate: null, raw: null, macerated: null }, { originAcrossMm: 0, originDownMm: 0, pxPerMm: 1, widthPx: 1, heightPx: 1 }, 1)[0] // 0
 */
export function rednessMask(
  outlines: Pick<Outlines, 'erythema' | 'nailPlate' | 'raw' | 'macerated'>,
  grid: MapGrid,
  rimMm: number,
): Uint8Array {
  const mask = regionMask(outlines.erythema?.rings ?? [], grid, rimMm);
  for (const overlay of [outlines.nailPlate, outlines.raw, outlines.macerated]) {
    if (overlay === null) continue;
    const covered = regionMask(overlay.rings, grid);
    for (let index = 0; index < mask.length; index += 1) {
      if (covered[index] === 1) mask[index] = 0;
    }
  }
  return mask;
}
