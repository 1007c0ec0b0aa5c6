import { LINEAR_TO_XYZ65 } from './constants';
import type { LinearRgb, Xyz65 } from './encodings';
import { multiplyMatrixVector } from './multiply-matrix-vector';

/**
 * Linear sRGB light to tristimulus values under D65.
 * @param linear linear light, white = 1
 * @returns XYZ with Y of white = 1
 * Source: IEC 61966-2-1:1999, 5.2, with exact coefficients (see `LINEAR_TO_XYZ65`).
 * @example convertLinearToXyz65({ red: 1, green: 1, blue: 1 }).y65 // 1
 */
export function convertLinearToXyz65(linear: LinearRgb): Xyz65 {
  const [x65, y65, z65] = multiplyMatrixVector(LINEAR_TO_XYZ65, [linear.red, linear.green, linear.blue]);
  return { x65, y65, z65 };
}
