import type { MapGrid } from '../rectify/millimetre-map';
import { BLOCK_SIDE_MM } from './constants';

export interface MaskMean {
  readonly mean: number;
  /** Type A standard uncertainty of the mean, from whole squares instead of pixels. */
  readonly u: number;
  /** Number of squares less one; null for a single square, whose u is the scatter of its pixels. */
  readonly dof: number | null;
  /** Area of the pixels that had a value. */
  readonly areaMm2: number;
  /** Share of the mask's pixels that had a value, 0…1. */
  readonly share: number;
}

/** Pixels with a value and their total, square by square; squares without any are empty. */
interface Squares {
  readonly counts: Float64Array;
  readonly totals: Float64Array;
}

/** Standard uncertainty of the weighted mean of squares; a square with few pixels counts little. */
function uOfSquares({ counts, totals }: Squares, filled: number, all: number, mean: number): number {
  let spread = 0;
  for (let k = 0; k < counts.length; k += 1) if (counts[k] > 0) spread += ((counts[k] / all) * (totals[k] / counts[k] - mean)) ** 2;
  return Math.sqrt((spread * filled) / (filled - 1));
}

/**
 * Mean of a plane over a mask, with an uncertainty that knows that neighbouring pixels are alike.
 *
 * Pixels share blur, JPEG blocks, pores and hairs: s/√n over thousands of pixels would claim a certainty that is not
 * there. So the map is cut into 2 mm squares whose means are taken as independent, and u is their weighted scatter
 * over the root of their number. A real gradient inside the region counts as scatter too: u is rather too large.
 *
 * @param plane one value per pixel; NaN where there is none
 * @param grid the map
 * @param mask 1 where the mean is taken
 * @returns mean and u in the plane's unit, or null where no pixel of the mask has a value
 * Source: block (batch) means, Carlstein 1986, Annals of Statistics 14:1171–9; JCGM 100:2008, 4.2.
 * @example meanInMask(Float32Array.of(3), { originAcrossMm: 0, originDownMm: 0, pxPerMm: 1, widthPx: 1, heightPx: 1 }, Uint8Array.of(1)).mean // 3
 */
export function meanInMask(plane: Float32Array, grid: MapGrid, mask: Uint8Array): MaskMean | null {
  const sidePx = BLOCK_SIDE_MM * grid.pxPerMm;
  const perRow = Math.ceil(grid.widthPx / sidePx);
  const perColumn = Math.ceil(grid.heightPx / sidePx);
  const squares = { counts: new Float64Array(perRow * perColumn), totals: new Float64Array(perRow * perColumn) };
  const whole = { count: 0, total: 0, squared: 0, masked: 0 };
  for (let row = 0, index = 0; row < grid.heightPx; row += 1) {
    const first = Math.floor(row / sidePx) * perRow;
    for (let column = 0; column < grid.widthPx; column += 1, index += 1) {
      if (mask[index] === 0) continue;
      whole.masked += 1;
      const value = plane[index];
      if (!Number.isFinite(value)) continue;
      const square = first + Math.floor(column / sidePx);
      squares.counts[square] += 1;
      squares.totals[square] += value;
      whole.count += 1;
      whole.total += value;
      whole.squared += value * value;
    }
  }
  if (whole.count === 0) return null;
  const mean = whole.total / whole.count;
  const filled = squares.counts.reduce((sum, count) => sum + (count > 0 ? 1 : 0), 0);
  const several = filled > 1;
  return {
    mean,
    u: several ? uOfSquares(squares, filled, whole.count, mean) : Math.sqrt(Math.max(0, whole.squared / whole.count - mean * mean)),
    dof: several ? filled - 1 : null,
    areaMm2: whole.count / grid.pxPerMm ** 2,
    share: whole.count / whole.masked,
  };
}
