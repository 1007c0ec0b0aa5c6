import { BRADFORD, WHITE_D50, WHITE_D65 } from './constants';
import type { Xyz50, Xyz65 } from './encodings';
import { invertMatrix } from './invert-matrix';
import { multiplyMatrixVector } from './multiply-matrix-vector';

const fromCones = invertMatrix(BRADFORD);
const conesD50 = multiplyMatrixVector(BRADFORD, [WHITE_D50.x50, WHITE_D50.y50, WHITE_D50.z50]);
const conesD65 = multiplyMatrixVector(BRADFORD, [WHITE_D65.x65, WHITE_D65.y65, WHITE_D65.z65]);

/**
 * The tristimulus values under D65 that look like the given ones under D50 (linear Bradford adaptation).
 * @param xyz50 XYZ under D50, Y of white = 1
 * @returns XYZ under D65, Y of white = 1
 * Source: Lam 1985, in the linear form of ICC.1:2022, annex E.
 * @example convertXyz50ToXyz65({ x50: 0, y50: 0, z50: 0 }).y65 // 0
 */
export function convertXyz50ToXyz65(xyz50: Xyz50): Xyz65 {
  const cones = multiplyMatrixVector(BRADFORD, [xyz50.x50, xyz50.y50, xyz50.z50]);
  const [x65, y65, z65] = multiplyMatrixVector(fromCones, [
    (cones[0] * conesD65[0]) / conesD50[0],
    (cones[1] * conesD65[1]) / conesD50[1],
    (cones[2] * conesD65[2]) / conesD50[2],
  ]);
  return { x65, y65, z65 };
}
