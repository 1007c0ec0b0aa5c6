import type { MapGrid } from '../rectify/millimetre-map';
import { MAD_TO_SIGMA } from '../rectify/constants';
import { LEAST_REFERENCE_VALUES } from './constants';
import { medianOf } from '../rectify/median-of';

/**
 * How much a plane scatters when looked at through squares of a stated size: camera noise, compression and skin
 * texture together, without slow changes across the toe, because only neighbouring squares are compared.
 * @param plane values on the grid, e.g. erythema index; NaN = no value
 * @param grid the plane's grid
 * @param mask 1 where the plane shows what the noise is wanted of (reference skin)
 * @param scaleMm side of the squares, mm; at least one pixel
 * @returns standard deviation of one square's mean, in the plane's unit; null where fewer than 30 pairs of squares, each
 * at least half inside the mask, lie side by side
 * Source: robust scale of first differences (MAD · 1.4826 / √2), as in Donoho and Johnstone, Biometrika 1994;81:425.
 * @example noiseAtScale(new Float32Array(4), grid, new Uint8Array(4), 1) // null
 */
export function noiseAtScale(plane: Float32Array, grid: MapGrid, mask: Uint8Array, scaleMm: number): number | null {
  const side = Math.max(1, Math.round(scaleMm * grid.pxPerMm));
  const across = Math.floor(grid.widthPx / side);
  const down = Math.floor(grid.heightPx / side);
  const means = new Float64Array(across * down);
  for (let square = 0; square < means.length; square += 1) {
    const row = Math.floor(square / across) * side;
    const column = (square % across) * side;
    means[square] = squareMean(plane, mask, grid.widthPx, row, column, side);
  }
  const steps: number[] = [];
  for (let square = 0; square < means.length; square += 1) {
    if (square % across > 0) steps.push(Math.abs(means[square] - means[square - 1]));
    if (square >= across) steps.push(Math.abs(means[square] - means[square - across]));
  }
  const known = steps.filter(Number.isFinite);
  return known.length < LEAST_REFERENCE_VALUES ? null : (MAD_TO_SIGMA * medianOf(known)) / Math.SQRT2;
}

/** Mean of the masked values in one square; NaN where fewer than half of its pixels count. */
function squareMean(
  plane: Float32Array,
  mask: Uint8Array,
  widthPx: number,
  row: number,
  column: number,
  side: number,
): number {
  let sum = 0;
  let count = 0;
  for (let r = row; r < row + side; r += 1) {
    for (let pixel = r * widthPx + column; pixel < r * widthPx + column + side; pixel += 1) {
      if (mask[pixel] === 1 && Number.isFinite(plane[pixel])) {
        sum += plane[pixel];
        count += 1;
      }
    }
  }
  return 2 * count >= side * side ? sum / count : NaN;
}
