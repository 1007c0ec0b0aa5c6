import { XYZ65_TO_LINEAR } from './constants';
import type { LinearRgb, Xyz65 } from './encodings';
import { multiplyMatrixVector } from './multiply-matrix-vector';

/**
 * Tristimulus values under D65 to linear sRGB light; colours outside the gamut get negative channels, not clamped ones.
 * @param xyz65 XYZ with Y of white = 1
 * @returns linear light, white = 1
 * Source: IEC 61966-2-1:1999, 5.3, with exact coefficients (see `XYZ65_TO_LINEAR`).
 * @example convertXyz65ToLinear({ x65: 0, y65: 0, z65: 0 }).red // 0
 */
export function convertXyz65ToLinear(xyz65: Xyz65): LinearRgb {
  const [red, green, blue] = multiplyMatrixVector(XYZ65_TO_LINEAR, [xyz65.x65, xyz65.y65, xyz65.z65]);
  return { red, green, blue };
}
