import type { PointMm } from '../units';
import type { MapGrid } from './millimetre-map';

/**
 * Card position of a map pixel.
 *
 * @param grid the map
 * @param row counted from the centres of the first row, may be fractional
 * @param column the same across
 * @example gridPoint({ originAcrossMm: 20, originDownMm: 12, pxPerMm: 8, widthPx: 352, heightPx: 448 }, 8, 4) // { acrossMm: 20.5, downMm: 13 }
 */
export function gridPoint(grid: MapGrid, row: number, column: number): PointMm {
  return { acrossMm: grid.originAcrossMm + column / grid.pxPerMm, downMm: grid.originDownMm + row / grid.pxPerMm };
}
