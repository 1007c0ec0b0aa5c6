import type { PointMm, PointPx } from '../units';
import type { MapGrid } from './millimetre-map';

/**
 * Where a point of the card lies in a map: the way back from `gridPoint`.
 *
 * @param grid the map
 * @param point on the card, mm
 * @returns fractional row and column, which may lie outside the map
 * @example gridPixel({ originAcrossMm: 20, originDownMm: 12, pxPerMm: 8, widthPx: 352, heightPx: 448 }, { acrossMm: 20.5, downMm: 13 }) // { row: 8, column: 4 }
 */
export function gridPixel(grid: MapGrid, point: PointMm): PointPx {
  return { row: (point.downMm - grid.originDownMm) * grid.pxPerMm, column: (point.acrossMm - grid.originAcrossMm) * grid.pxPerMm };
}
