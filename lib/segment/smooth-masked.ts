import type { MapGrid } from '../rectify/millimetre-map';

/**
 * Mean of a plane over a square window, counting only marked pixels; NaN where the window holds none.
 *
 * @param grid the map
 * @param plane one value per pixel
 * @param mask not 0 = counts
 * @param sideMm side of the window
 * @example smoothMasked(grid, ei, skin, 1)[0]
 */
export function smoothMasked(grid: MapGrid, plane: Float32Array, mask: Uint8Array, sideMm: number): Float32Array {
  const { widthPx, heightPx } = grid;
  const half = Math.max(0, Math.round((sideMm * grid.pxPerMm - 1) / 2));
  const sums = new Float64Array((widthPx + 1) * (heightPx + 1));
  const counts = new Float64Array((widthPx + 1) * (heightPx + 1));
  const stride = widthPx + 1;
  for (let r = 0; r < heightPx; r++) {
    let sum = 0;
    let count = 0;
    for (let c = 0; c < widthPx; c++) {
      const i = r * widthPx + c;
      if (mask[i]) {
        sum += plane[i];
        count++;
      }
      sums[(r + 1) * stride + c + 1] = sums[r * stride + c + 1] + sum;
      counts[(r + 1) * stride + c + 1] = counts[r * stride + c + 1] + count;
    }
  }
  const result = new Float32Array(widthPx * heightPx);
  for (let r = 0; r < heightPx; r++) {
    const top = Math.max(0, r - half) * stride;
    const bottom = Math.min(heightPx, r + half + 1) * stride;
    for (let c = 0; c < widthPx; c++) {
      const left = Math.max(0, c - half);
      const right = Math.min(widthPx, c + half + 1);
      const count = counts[bottom + right] - counts[top + right] - counts[bottom + left] + counts[top + left];
      const sum = sums[bottom + right] - sums[top + right] - sums[bottom + left] + sums[top + left];
      result[r * widthPx + c] = count > 0 ? sum / count : NaN;
    }
  }
  return result;
}
