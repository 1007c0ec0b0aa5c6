import type { MapGrid } from '../rectify/millimetre-map';

/**
 * Distance of every pixel to the nearest marked pixel, mm: exact Euclidean transform, columns by counting, rows by the
 * lower envelope of parabolas (Meijster, Roerdink and Hesselink 2000; Felzenszwalb and Huttenlocher, Theory of Computing
 * 2012;8:415-428).
 *
 * @param grid the map
 * @param marked one value per pixel, not 0 = marked
 * @param withinMm only distances up to this are needed: larger ones may come back as Infinity, and much sooner
 * @returns mm; Infinity everywhere when nothing is marked
 * @example distanceField(grid, margin)[0]
 */
export function distanceField(grid: MapGrid, marked: Uint8Array, withinMm = Infinity): Float32Array {
  const { widthPx, heightPx } = grid;
  const far = Math.min(FAR, withinMm * grid.pxPerMm + 1);
  const heights = columnDistances(marked, widthPx);
  const result = new Float32Array(widthPx * heightPx);
  const places = new Int32Array(widthPx);
  const bounds = new Float64Array(widthPx + 1);
  for (let row = 0; row < heightPx; row++) {
    const start = row * widthPx;
    const last = envelope(heights, start, widthPx, places, bounds, far);
    if (last < 0) {
      result.fill(Infinity, start, start + widthPx);
      continue;
    }
    for (let q = 0, k = 0; q < widthPx; q++) {
      while (k < last && bounds[k + 1] < q) k++;
      const high = heights[start + places[k]];
      const off = q - places[k];
      result[start + q] = Math.sqrt(off * off + high * high) / grid.pxPerMm;
    }
  }
  return result;
}

const FAR = 1e6;

/** Pixels to the nearest marked pixel in the same column. */
function columnDistances(marked: Uint8Array, widthPx: number): Float32Array {
  const distances = new Float32Array(marked.length);
  for (let i = 0; i < marked.length; i++) {
    distances[i] = marked[i] ? 0 : i < widthPx ? FAR : Math.min(FAR, distances[i - widthPx] + 1);
  }
  for (let i = marked.length - widthPx - 1; i >= 0; i--) {
    if (distances[i + widthPx] + 1 < distances[i]) distances[i] = distances[i + widthPx] + 1;
  }
  return distances;
}

/** Lower envelope of the row's parabolas: their places and the bounds between them; returns the last one's index. */
function envelope(heights: Float32Array, start: number, widthPx: number, places: Int32Array, bounds: Float64Array, far: number): number {
  let last = -1;
  for (let q = 0; q < widthPx; q++) {
    const high = heights[start + q];
    if (high >= far) continue;
    let at = -Infinity;
    while (last >= 0) {
      const p = places[last];
      const lower = heights[start + p];
      at = (high * high + q * q - lower * lower - p * p) / (2 * (q - p));
      if (at > bounds[last]) break;
      last--;
    }
    last++;
    places[last] = q;
    bounds[last] = last === 0 ? -Infinity : at;
  }
  return last;
}
