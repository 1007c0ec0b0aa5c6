import type { MapGrid } from '../rectify/millimetre-map';
import type { NotMeasuredReason } from '../result';
import type { Region } from '../segment/segmentation';
import { EDGE_SPACING_MM, OUT_OF_VIEW_EDGE_MM } from './constants';
import { regionAreaMm2 } from './region-area';
import { regionEdge } from './region-edge';

/**
 * Why a region cannot be measured as a whole, if so.
 *
 * @param region outline, or null where the segment stage found none
 * @param grid the map that it was found on; an edge along the map's border is cut off, not found
 * @returns the reason, or null where nothing stands against measuring
 * @example regionRefusal(null, { originAcrossMm: 0, originDownMm: 0, pxPerMm: 1, widthPx: 1, heightPx: 1 }) // 'noRegionFound'
 */
export function regionRefusal(region: Region | null, grid: MapGrid): NotMeasuredReason | null {
  if (region === null || !(regionAreaMm2(region.rings) > 0)) return 'noRegionFound';
  const pixelMm = 1 / grid.pxPerMm;
  const right = grid.originAcrossMm + (grid.widthPx - 1) * pixelMm;
  const bottom = grid.originDownMm + (grid.heightPx - 1) * pixelMm;
  const atBorder = regionEdge(region.rings)
    .flat()
    .filter(
      ({ acrossMm, downMm }) =>
        Math.min(acrossMm - grid.originAcrossMm, right - acrossMm, downMm - grid.originDownMm, bottom - downMm) < pixelMm,
    ).length;
  return atBorder * EDGE_SPACING_MM > OUT_OF_VIEW_EDGE_MM ? 'outOfView' : null;
}
