/**
 * Solves a small dense linear system by Gaussian elimination with partial pivoting.
 *
 * @param matrix n rows of n numbers; not changed
 * @param right n numbers
 * @returns the solution, or null when the matrix is singular to working precision
 * @example solveLinear([[2, 0], [0, 4]], [2, 4]) // [1, 1]
 */
export function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]]);
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let r = column + 1; r < n; r++) if (Math.abs(rows[r][column]) > Math.abs(rows[pivot][column])) pivot = r;
    if (Math.abs(rows[pivot][column]) < 1e-14) return null;
    [rows[column], rows[pivot]] = [rows[pivot], rows[column]];
    for (let r = column + 1; r < n; r++) {
      const factor = rows[r][column] / rows[column][column];
      for (let c = column; c <= n; c++) rows[r][c] -= factor * rows[column][c];
    }
  }
  const solution = new Array<number>(n);
  for (let r = n - 1; r >= 0; r--) {
    let value = rows[r][n];
    for (let c = r + 1; c < n; c++) value -= rows[r][c] * solution[c];
    solution[r] = value / rows[r][r];
  }
  return solution;
}
