import { LINEAR_TO_XYZ65, WHITE_D65 } from './constants';
import type { LinearRgb } from './encodings';
import { compressLab } from './compress-lab';
import type { ReflectanceMap } from './reflectance-map';

/** L*a*b* (D65, 2°) planes of length widthPx · heightPx. */
export interface Lab65Map {
  readonly l65: Float32Array;
  readonly a65: Float32Array;
  readonly b65: Float32Array;
}

/**
 * L*a*b* of the pixels that are asked for.
 * @param map light relative to paper
 * @param paperLight light of the paper relative to a perfect diffuser
 * @param wanted at least 0.5 where the colour is needed; left out = wherever the map is seen
 * @returns planes of L*, a*, b*; NaN where not wanted or not seen
 * Source: as `convertLinearToLab65`, with paper, matrix and white multiplied into one matrix.
 * @example lab65Map(map, { red: 1, green: 1, blue: 1 }).l65[0] // 100
 */
export function lab65Map(map: ReflectanceMap, paperLight: LinearRgb, wanted?: Uint8Array | Float32Array): Lab65Map {
  const { red, green, blue, seen } = map;
  const asked = wanted ?? seen;
  const white = [WHITE_D65.x65, WHITE_D65.y65, WHITE_D65.z65];
  const [[xr, xg, xb], [yr, yg, yb], [zr, zg, zb]] = LINEAR_TO_XYZ65.map((row, k) => [
    (row[0] * paperLight.red) / white[k],
    (row[1] * paperLight.green) / white[k],
    (row[2] * paperLight.blue) / white[k],
  ]);
  const empty = (): Float32Array => new Float32Array(red.length).fill(NaN);
  const [l65, a65, b65] = [empty(), empty(), empty()];
  for (let pixel = 0; pixel < red.length; pixel += 1) {
    if (asked[pixel] < 0.5 || seen[pixel] === 0) continue;
    const r = red[pixel];
    const g = green[pixel];
    const b = blue[pixel];
    const fx = compressLab(xr * r + xg * g + xb * b);
    const fy = compressLab(yr * r + yg * g + yb * b);
    const fz = compressLab(zr * r + zg * g + zb * b);
    l65[pixel] = 116 * fy - 16;
    a65[pixel] = 500 * (fx - fy);
    b65[pixel] = 200 * (fy - fz);
  }
  return { l65, a65, b65 };
}
