import type { MapGrid } from '../rectify/millimetre-map';
import type { PointMm } from '../units';
import type { Rings } from './region-area';
import { regionEdge } from './region-edge';

/** Columns at which the edges of all rings cross one row of pixel centres. */
function crossings(rings: Rings, grid: MapGrid, row: number): number[] {
  const downMm = grid.originDownMm + row / grid.pxPerMm;
  const columns: number[] = [];
  for (const { ring } of rings) {
    ring.forEach((from, index) => {
      const to = ring[(index + 1) % ring.length];
      if (from.downMm <= downMm === to.downMm <= downMm) return;
      const share = (downMm - from.downMm) / (to.downMm - from.downMm);
      const acrossMm = from.acrossMm + share * (to.acrossMm - from.acrossMm);
      columns.push((acrossMm - grid.originAcrossMm) * grid.pxPerMm);
    });
  }
  return columns.sort((a, b) => a - b);
}

function fillDisc(mask: Uint8Array, grid: MapGrid, centre: PointMm, radiusMm: number): void {
  const row = (centre.downMm - grid.originDownMm) * grid.pxPerMm;
  const column = (centre.acrossMm - grid.originAcrossMm) * grid.pxPerMm;
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
 * Example: `regionMask([], { originAcrossMm: 0, originDownMm: 0, pxPerMm: 1, widthPx: 1, heightPx: 1 })[0]` is 0.
 */
export function regionMask(rings: Rings, grid: MapGrid, rimMm = 0): Uint8Array {
  if (!(rimMm >= 0)) throw new RangeError(`regionMask: rimMm must be ≥ 0, received ${rimMm}`);
  const mask = new Uint8Array(grid.widthPx * grid.heightPx);
  for (let row = 0; row < grid.heightPx; row += 1) {
    const columns = crossings(rings, grid, row);
    for (let pair = 0; pair + 1 < columns.length; pair += 2) {
      const from = Math.max(0, Math.ceil(columns[pair]));
      const to = Math.min(grid.widthPx - 1, Math.ceil(columns[pair + 1]) - 1);
      if (to >= from) mask.fill(1, row * grid.widthPx + from, row * grid.widthPx + to + 1);
    }
  }
  if (rimMm > 0) regionEdge(rings).flat().forEach((point) => fillDisc(mask, grid, point, rimMm));
  return mask;
}
