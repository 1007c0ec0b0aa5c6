import { BRADFORD, WHITE_D50, WHITE_D65 } from './constants';
import type { Xyz50, Xyz65 } from './encodings';
import { invertMatrix } from './invert-matrix';
import { multiplyMatrixVector } from './multiply-matrix-vector';
import type { Vector3 } from './multiply-matrix-vector';

const fromCones = invertMatrix(BRADFORD);
const conesD50 = multiplyMatrixVector(BRADFORD, [WHITE_D50.x50, WHITE_D50.y50, WHITE_D50.z50]);
const conesD65 = multiplyMatrixVector(BRADFORD, [WHITE_D65.x65, WHITE_D65.y65, WHITE_D65.z65]);

function adapt(xyz: Vector3, from: Vector3, to: Vector3): Vector3 {
  const cones = multiplyMatrixVector(BRADFORD, xyz);
  return multiplyMatrixVector(fromCones, [
    (cones[0] * to[0]) / from[0],
    (cones[1] * to[1]) / from[1],
    (cones[2] * to[2]) / from[2],
  ]);
}

/**
 * The tristimulus values under D65 that look like the given ones under D50 (linear Bradford adaptation).
 * @param xyz50 XYZ under D50, Y of white = 1
 * @returns XYZ under D65, Y of white = 1
 * Source: Lam 1985, in the linear form of ICC.1:2022, annex E.
 * @example convertXyz50ToXyz65({ x50: 0, y50: 0, z50: 0 }).y65 // 0
 */
export function convertXyz50ToXyz65(xyz50: Xyz50): Xyz65 {
  const [x65, y65, z65] = adapt([xyz50.x50, xyz50.y50, xyz50.z50], conesD50, conesD65);
  return { x65, y65, z65 };
}

/**
 * The tristimulus values under D50 that look like the given ones under D65 (linear Bradford adaptation).
 * @param xyz65 XYZ under D65, Y of white = 1
 * @returns XYZ under D50, Y of white = 1
 * Source: Lam 1985, in the linear form of ICC.1:2022, annex E.
 * @example convertXyz65ToXyz50({ x65: 0, y65: 0, z65: 0 }).y50 // 0
 */
export function convertXyz65ToXyz50(xyz65: Xyz65): Xyz50 {
  const [x50, y50, z50] = adapt([xyz65.x65, xyz65.y65, xyz65.z65], conesD65, conesD50);
  return { x50, y50, z50 };
}
