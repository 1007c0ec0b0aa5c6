import type { Matrix3 } from './multiply-matrix-vector';

/**
 * The inverse of a 3 × 3 matrix, by cofactors.
 * @param matrix three rows of three
 * @returns the inverse; throws a RangeError where the determinant is zero
 * @example invertMatrix([[2, 0, 0], [0, 2, 0], [0, 0, 2]])[0][0] // 0.5
 */
export function invertMatrix(matrix: Matrix3): Matrix3 {
  const [[a, b, c], [d, e, f], [g, h, i]] = matrix;
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!Number.isFinite(1 / determinant)) {
    throw new RangeError(`invertMatrix: the determinant must not be zero, received ${determinant}`);
  }
  return [
    [(e * i - f * h) / determinant, (c * h - b * i) / determinant, (b * f - c * e) / determinant],
    [(f * g - d * i) / determinant, (a * i - c * g) / determinant, (c * d - a * f) / determinant],
    [(d * h - e * g) / determinant, (b * g - a * h) / determinant, (a * e - b * d) / determinant],
  ];
}
