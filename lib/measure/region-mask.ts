import { gridPixel } from '../rectify/grid-pixel';
import type { MapGrid } from '../rectify/millimetre-map';
import { ringMask } from '../rectify/ring-mask';
import type { PointMm } from '../units';
import type { Rings } from './region-area';
import { regionEdge } from './region-edge';

function fillDisc(mask: Uint8Array, grid: MapGrid, centre: PointMm, radiusMm: number): void {
  const { row, column } = gridPixel(grid, centre);
  const radius = radiusMm * grid.pxPerMm;
  for (let r = Math.max(0, Math.ceil(row - radius)); r <= Math.min(grid.heightPx - 1, row + radius); r += 1) {
    const half = Math.sqrt(Math.max(0, radius ** 2 - (r - row) ** 2));
    const from = Math.max(0, Math.ceil(column - half));
    const to = Math.min(grid.widthPx - 1, Math.floor(column + half));
    if (to >= from) mask.fill(1, r * grid.widthPx + from, r * grid.widthPx + to + 1);
  }
}

/**
 * Which pixels of a map have their centre inside a region, or within a rim around it.
 *
 * @param rings rings in mm; inside is where a line outward crosses an odd number of edges, so holes are left out
 * @param grid the map
 * @param rimMm width of the rim, ≥ 0; with a rim, holes narrower than twice as much close up
 * @returns 1 inside, 0 outside, row by row
 * @throws RangeError for a negative rim
 * @example regionMask([{ hole: false, ring: [{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 4 }] }], { originAcrossMm: 0, originDownMm: 0, pxPerMm: 1, widthPx: 3, heightPx: 2 }) // [1, 1, 1, 1, 1, 1]
 */
export function regionMask(rings: Rings, grid: MapGrid, rimMm = 0): Uint8Array {
  if (!(rimMm >= 0)) throw new RangeError(`regionMask: rimMm must be ≥ 0, received ${rimMm}`);
  const mask = ringMask(rings.map(({ ring }) => ring), grid);
  if (rimMm > 0) regionEdge(rings).flat().forEach((point) => fillDisc(mask, grid, point, rimMm));
  return mask;
}
