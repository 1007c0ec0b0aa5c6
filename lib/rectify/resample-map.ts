import { nothingAt } from '../photo/nothing-at';
import { partOf } from '../photo/part-of';
import type { UprightPhoto } from '../photo/upright-photo';
import { CLIPPED_CODE } from './constants';
import { gridPoint } from './grid-point';
import { type Homography, pxPerMmAt } from './homography';
import type { LinearMap, MapGrid } from './millimetre-map';

/** Code value → linear light, one table of 256 per channel. */
export interface LinearTables {
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
}

const MOST_SUBSAMPLES = 3;

/**
 * Resamples the photo to a millimetre map in linear light: bilinear between camera pixels, and where the photo is
 * finer than the map the mean of up to 3 × 3 samples per map pixel, so that nothing aliases. Averages are taken after
 * linearising, never on coded values.
 *
 * @param photo the upright photo
 * @param imageFromCard the card's plane
 * @param grid the map to fill
 * @param tables the photo's own tone curve
 * @returns planes of linear light; `seen` is 0 outside the photo and where any channel is clipped
 * @throws NotDecoded where only another part of the photo was decoded
 * @example resampleMap(photo, fit.imageFromCard, toeGrid(geometry, 9), tables).green.length
 */
export function resampleMap(photo: UprightPhoto, imageFromCard: Homography, grid: MapGrid, tables: LinearTables): LinearMap {
  const pixels = grid.widthPx * grid.heightPx;
  const map: LinearMap = {
    grid,
    red: new Float32Array(pixels),
    green: new Float32Array(pixels),
    blue: new Float32Array(pixels),
    seen: new Uint8Array(pixels),
  };
  const middle = gridPoint(grid, grid.heightPx / 2, grid.widthPx / 2);
  const finer = pxPerMmAt(imageFromCard, middle) / grid.pxPerMm;
  const subsamples = Math.min(MOST_SUBSAMPLES, Math.max(1, Math.round(finer)));
  for (let row = 0; row < grid.heightPx; row++) fillRow(map, row, photo, imageFromCard, tables, subsamples);
  return map;
}

function fillRow(map: LinearMap, row: number, photo: UprightPhoto, h: Homography, tables: LinearTables, n: number): void {
  const { grid, red, green, blue, seen } = map;
  const { srgb } = photo;
  const { left, top, widthPx, heightPx } = partOf(photo);
  const [lastRow, lastColumn] = [top + heightPx - 1, left + widthPx - 1];
  for (let column = 0; column < grid.widthPx; column++) {
    let [sumRed, sumGreen, sumBlue] = [0, 0, 0];
    let whole = 1;
    for (let sub = 0; sub < n * n; sub++) {
      const across = grid.originAcrossMm + (column + ((sub % n) + 0.5) / n - 0.5) / grid.pxPerMm;
      const down = grid.originDownMm + (row + (((sub / n) | 0) + 0.5) / n - 0.5) / grid.pxPerMm;
      const w = 1 / (h[6] * across + h[7] * down + h[8]);
      const x = (h[0] * across + h[1] * down + h[2]) * w;
      const y = (h[3] * across + h[4] * down + h[5]) * w;
      if (!(x >= left && y >= top && x < lastColumn && y < lastRow)) {
        whole = nothingAt(photo, y, x) ?? 0;
        continue;
      }
      const x0 = x | 0;
      const y0 = y | 0;
      const fx = x - x0;
      const fy = y - y0;
      const at = ((y0 - top) * widthPx + x0 - left) * 3;
      const topLeft = (1 - fx) * (1 - fy);
      const topRight = fx * (1 - fy);
      const lowLeft = (1 - fx) * fy;
      const lowRight = fx * fy;
      const below = at + widthPx * 3;
      sumRed += topLeft * tables.red[srgb[at]] + topRight * tables.red[srgb[at + 3]] + lowLeft * tables.red[srgb[below]] + lowRight * tables.red[srgb[below + 3]];
      sumGreen += topLeft * tables.green[srgb[at + 1]] + topRight * tables.green[srgb[at + 4]] + lowLeft * tables.green[srgb[below + 1]] + lowRight * tables.green[srgb[below + 4]];
      sumBlue += topLeft * tables.blue[srgb[at + 2]] + topRight * tables.blue[srgb[at + 5]] + lowLeft * tables.blue[srgb[below + 2]] + lowRight * tables.blue[srgb[below + 5]];
      if (isClipped(srgb, at) || isClipped(srgb, at + 3) || isClipped(srgb, below) || isClipped(srgb, below + 3)) whole = 0;
    }
    const i = row * grid.widthPx + column;
    red[i] = sumRed / (n * n);
    green[i] = sumGreen / (n * n);
    blue[i] = sumBlue / (n * n);
    seen[i] = whole;
  }
}

function isClipped(srgb: Uint8Array, at: number): boolean {
  return srgb[at] >= CLIPPED_CODE || srgb[at + 1] >= CLIPPED_CODE || srgb[at + 2] >= CLIPPED_CODE;
}
