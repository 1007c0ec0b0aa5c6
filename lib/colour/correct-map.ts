import type { LinearMap, MapGrid } from '../rectify/millimetre-map';
import type { QuadraticField } from './quadratic-field';
import type { ReflectanceMap } from './reflectance-map';
import type { Shading } from './shading';

/**
 * Divides a photo's light by the light of bare paper, pixel by pixel.
 * @param map linear light, made with the tone tables that the shading was fitted with
 * @param shading light of bare paper over the card
 * @returns light relative to paper; `seen` is the map's own
 * @example correctMap(map, shading).red[0] // 1
 */
export function correctMap(map: LinearMap, shading: Shading): ReflectanceMap {
  return {
    grid: map.grid,
    red: divideByField(map.red, map.grid, shading.red),
    green: divideByField(map.green, map.grid, shading.green),
    blue: divideByField(map.blue, map.grid, shading.blue),
    seen: map.seen,
  };
}

/**
 * plane / exp(field). Along a row the field is a quadratic, so the factor from pixel to pixel is itself multiplied by a
 * constant: two multiplications per pixel in place of an exponential. Rounding grows to some 1e-13 over a row.
 */
function divideByField(plane: Float32Array, grid: MapGrid, field: QuadraticField): Float32Array {
  const [c0, c1, c2, c3, c4, c5] = field.coefficients;
  const result = new Float32Array(plane.length);
  const s0 = (grid.originAcrossMm - field.centre.acrossMm) / field.halfSpan.acrossMm;
  const step = 1 / grid.pxPerMm / field.halfSpan.acrossMm;
  const bend = Math.exp(-2 * c3 * step * step);
  for (let row = 0; row < grid.heightPx; row += 1) {
    const t = (grid.originDownMm + row / grid.pxPerMm - field.centre.downMm) / field.halfSpan.downMm;
    const linear = c1 + c4 * t;
    let factor = Math.exp(-(c0 + c2 * t + c5 * t * t + linear * s0 + c3 * s0 * s0));
    let growth = Math.exp(-(linear * step + c3 * step * (2 * s0 + step)));
    const start = row * grid.widthPx;
    for (let index = start; index < start + grid.widthPx; index += 1) {
      result[index] = plane[index] * factor;
      factor *= growth;
      growth *= bend;
    }
  }
  return result;
}
