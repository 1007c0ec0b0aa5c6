import type { MapGrid } from '../rectify/millimetre-map';

/**
 * Distance of every pixel to the nearest marked pixel, mm: exact Euclidean transform in two passes of parabolas
 * (Felzenszwalb and Huttenlocher, Theory of Computing 2012;8:415-428).
 *
 * @param grid the map
 * @param marked one value per pixel, not 0 = marked
 * @returns mm; Infinity everywhere when nothing is marked
 * @example distanceField(grid, margin)[0]
 */
export function distanceField(grid: MapGrid, marked: Uint8Array): Float32Array {
  const { widthPx, heightPx } = grid;
  const squared = Float64Array.from(marked, (one) => (one ? 0 : FAR));
  const column = new Float64Array(heightPx);
  for (let c = 0; c < widthPx; c++) {
    for (let r = 0; r < heightPx; r++) column[r] = squared[r * widthPx + c];
    const along = lowerEnvelope(column);
    for (let r = 0; r < heightPx; r++) squared[r * widthPx + c] = along[r];
  }
  const result = new Float32Array(widthPx * heightPx);
  for (let r = 0; r < heightPx; r++) {
    const along = lowerEnvelope(squared.subarray(r * widthPx, (r + 1) * widthPx));
    for (let c = 0; c < widthPx; c++) result[r * widthPx + c] = along[c] >= FAR ? Infinity : Math.sqrt(along[c]) / grid.pxPerMm;
  }
  return result;
}

const FAR = 1e12;

/** One-dimensional squared distance transform of sampled heights. */
function lowerEnvelope(heights: Float64Array): Float64Array {
  const n = heights.length;
  const places = new Int32Array(n);
  const bounds = new Float64Array(n + 1);
  let last = 0;
  bounds[0] = -Infinity;
  bounds[1] = Infinity;
  const meet = (q: number, p: number) => (heights[q] + q * q - heights[p] - p * p) / (2 * (q - p));
  for (let q = 1; q < n; q++) {
    let at = meet(q, places[last]);
    while (at <= bounds[last]) at = meet(q, places[--last]);
    places[++last] = q;
    bounds[last] = at;
    bounds[last + 1] = Infinity;
  }
  const result = new Float64Array(n);
  for (let q = 0, k = 0; q < n; q++) {
    while (bounds[k + 1] < q) k++;
    result[q] = (q - places[k]) ** 2 + heights[places[k]];
  }
  return result;
}
