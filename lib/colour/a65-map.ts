import { LINEAR_TO_XYZ65, WHITE_D65 } from './constants';
import type { LinearRgb } from './encodings';
import { compressLab } from './compress-lab';
import type { ReflectanceMap } from './reflectance-map';

/**
 * a* (D65, 2°) of the pixels that are asked for: the one of the three that redness moves.
 * @param map light relative to paper
 * @param paperLight light of the paper relative to a perfect diffuser
 * @param wanted at least 0.5 where it is needed; left out = wherever the map is seen
 * @returns plane of a*; NaN where not wanted or not seen
 * Source: as `convertLinearToLab65`, with paper, matrix and white multiplied into one matrix.
 * @example a65Map(map, { red: 1, green: 1, blue: 1 })[0] // 0
 */
export function a65Map(map: ReflectanceMap, paperLight: LinearRgb, wanted?: Uint8Array | Float32Array): Float32Array {
  const { red, green, blue, seen } = map;
  const asked = wanted ?? seen;
  const white = [WHITE_D65.x65, WHITE_D65.y65];
  const [[xr, xg, xb], [yr, yg, yb]] = [LINEAR_TO_XYZ65[0], LINEAR_TO_XYZ65[1]].map((row, k) => [
    (row[0] * paperLight.red) / white[k],
    (row[1] * paperLight.green) / white[k],
    (row[2] * paperLight.blue) / white[k],
  ]);
  const a65 = new Float32Array(red.length).fill(NaN);
  for (let pixel = 0; pixel < red.length; pixel += 1) {
    if (asked[pixel] < 0.5 || seen[pixel] === 0) continue;
    const r = red[pixel];
    const g = green[pixel];
    const b = blue[pixel];
    a65[pixel] = 500 * (compressLab(xr * r + xg * g + xb * b) - compressLab(yr * r + yg * g + yb * b));
  }
  return a65;
}
