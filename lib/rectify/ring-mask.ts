import type { RingMm } from '../units';
import { gridPixel } from './grid-pixel';
import type { MapGrid } from './millimetre-map';

/**
 * Which pixels of a map have their centre inside closed outlines; holes are outlines inside outlines (even–odd).
 *
 * @param rings outlines in mm, in any order
 * @param grid the map
 * @returns 1 inside, 0 outside, row by row
 * @example ringMask([[{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 4 }]], { originAcrossMm: 0, originDownMm: 0, pxPerMm: 1, widthPx: 3, heightPx: 2 }) // [1, 1, 1, 1, 1, 1]
 */
export function ringMask(rings: readonly RingMm[], grid: MapGrid): Uint8Array {
  const mask = new Uint8Array(grid.widthPx * grid.heightPx);
  crossingsByRow(rings, grid).forEach((columns, row) => {
    for (let pair = 0; pair + 1 < columns.length; pair += 2) {
      const from = Math.max(0, Math.ceil(columns[pair]));
      const to = Math.min(grid.widthPx - 1, Math.ceil(columns[pair + 1]) - 1);
      if (to >= from) mask.fill(1, row * grid.widthPx + from, row * grid.widthPx + to + 1);
    }
  });
  return mask;
}

/** For every row of pixel centres the columns at which edges cross it. Each edge is visited once. */
function crossingsByRow(rings: readonly RingMm[], grid: MapGrid): number[][] {
  const byRow = Array.from({ length: grid.heightPx }, (): number[] => []);
  for (const ring of rings) {
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
