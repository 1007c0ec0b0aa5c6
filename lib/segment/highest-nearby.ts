import type { MapGrid } from '../rectify/millimetre-map';
import type { PointMm } from '../units';
import { MARGIN_SEARCH_MM } from './constants';

/**
 * The highest value of a field within MARGIN_SEARCH_MM of a place.
 *
 * @param grid the map
 * @param field one value per pixel, ≥ 0
 * @param point place on the card, mm
 * @returns 0 beside the map
 * @example highestNearby(fields.grid, fields.foldMargin, { acrossMm: 46, downMm: 25 }) // 0.8
 */
export function highestNearby(grid: MapGrid, field: Float32Array, point: PointMm): number {
  const reach = Math.round(MARGIN_SEARCH_MM * grid.pxPerMm);
  const row = Math.round((point.downMm - grid.originDownMm) * grid.pxPerMm);
  const column = Math.round((point.acrossMm - grid.originAcrossMm) * grid.pxPerMm);
  let highest = 0;
  for (let r = Math.max(0, row - reach); r <= Math.min(grid.heightPx - 1, row + reach); r++) {
    for (let c = Math.max(0, column - reach); c <= Math.min(grid.widthPx - 1, column + reach); c++) {
      highest = Math.max(highest, field[r * grid.widthPx + c]);
    }
  }
  return highest;
}
