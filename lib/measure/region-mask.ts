import { gridPixel } from '../rectify/grid-pixel';
import type { MapGrid } from '../rectify/millimetre-map';
import type { PointMm } from '../units';
import type { Rings } from './region-area';
import { regionEdge } from './region-edge';

/** For every row of pixel centres the columns at which edges cross it. Each edge is visited once. */
function crossingsByRow(rings: Rings, grid: MapGrid): number[][] {
  const byRow = Array.from({ length: grid.heightPx }, (): number[] => []);
  for (const { ring } of rings) {
    ring.forEach((from, index) => {
      const to = ring[(index + 1) % ring.length];
      const [upper, lower] = from.downMm <= to.downMm ? [from, to] : [to, from];
      const top = gridPixel(grid, upper);
      const bottom = gridPixel(grid, lower);
      // Upper end included, lower end not: a corner between two edges is crossed once.
      for (let row = Math.max(0, Math.ceil(top.row)); row < Math.min(grid.heightPx, bottom.row); row += 1) {
        const share = (row - top.row) / (bottom.row - top.row);
        byRow[row].push(top.column + share * (bottom.column - top.column));
      }
    });
  }
  return byRow.map((columns) => columns.sort((a, b) => a - b));
}

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
  const mask = new Uint8Array(grid.widthPx * grid.heightPx);
  crossingsByRow(rings, grid).forEach((columns, row) => {
    for (let pair = 0; pair + 1 < columns.length; pair += 2) {
      const from = Math.max(0, Math.ceil(columns[pair]));
      const to = Math.min(grid.widthPx - 1, Math.ceil(columns[pair + 1]) - 1);
      if (to >= from) mask.fill(1, row * grid.widthPx + from, row * grid.widthPx + to + 1);
    }
  });
  if (rimMm > 0) regionEdge(rings).flat().forEach((point) => fillDisc(mask, grid, point, rimMm));
  return mask;
}
