export type Vector3 = readonly [number, number, number];
export type Matrix3 = readonly [Vector3, Vector3, Vector3];

/**
 * A 3 × 3 matrix times a column vector.
 * @param matrix three rows of three
 * @param vector three numbers
 * @returns three numbers
 * @example multiplyMatrixVector([[1, 0, 0], [0, 2, 0], [0, 0, 3]], [1, 1, 1])[2] // 3
 */
export function multiplyMatrixVector(matrix: Matrix3, vector: Vector3): Vector3 {
  const [first, second, third] = vector;
  const dot = (row: Vector3): number => row[0] * first + row[1] * second + row[2] * third;
  return [dot(matrix[0]), dot(matrix[1]), dot(matrix[2])];
}
