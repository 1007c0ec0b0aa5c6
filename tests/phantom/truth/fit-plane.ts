/** The projective map from picture to card that fits pairs of points best: normal equations of its eight numbers. */
import type { LineOfPairs } from '../phantom-truth';

function solve(matrix: number[][], right: number[]): number[] {
  const size = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]]);
  for (let k = 0; k < size; k++) {
    const pivot = rows.slice(k).reduce((best, row, i) => (Math.abs(row[k]) > Math.abs(rows[best][k]) ? i + k : best), k);
    [rows[k], rows[pivot]] = [rows[pivot], rows[k]];
    for (let r = 0; r < size; r++) {
      if (r === k) continue;
      const share = rows[r][k] / rows[k][k];
      for (let c = k; c <= size; c++) rows[r][c] -= share * rows[k][c];
    }
  }
  return rows.map((row, i) => row[size] / row[i]);
}

/** Moves and scales points to lie around the origin, for the sake of the arithmetic. */
function tame(points: LineOfPairs): { scale: number; shift: readonly [number, number] } {
  const mean = [0, 1].map((k) => points.reduce((sum, point) => sum + point[k], 0) / points.length) as [number, number];
  const spread = Math.sqrt(points.reduce((sum, [x, y]) => sum + (x - mean[0]) ** 2 + (y - mean[1]) ** 2, 0) / points.length);
  return { scale: 1 / spread, shift: mean };
}

const multiply = (a: readonly number[], b: readonly number[]): number[] =>
  Array.from({ length: 9 }, (_, i) => [0, 1, 2].reduce((sum, k) => sum + a[3 * Math.floor(i / 3) + k] * b[3 * k + (i % 3)], 0));

/** Nine numbers row by row, the last one 1: [column, row, 1] → [across, down, 1]. Algebraic error, scaled points. */
export function fitPlane(imagePx: LineOfPairs, cardMm: LineOfPairs): number[] {
  const p = tame(imagePx);
  const q = tame(cardMm);
  const normal = Array.from({ length: 8 }, () => new Array<number>(8).fill(0));
  const right = new Array<number>(8).fill(0);
  imagePx.forEach((image, i) => {
    const x = (image[0] - p.shift[0]) * p.scale, y = (image[1] - p.shift[1]) * p.scale;
    const u = (cardMm[i][0] - q.shift[0]) * q.scale, v = (cardMm[i][1] - q.shift[1]) * q.scale;
    for (const [row, value] of [[[x, y, 1, 0, 0, 0, -u * x, -u * y], u], [[0, 0, 0, x, y, 1, -v * x, -v * y], v]] as const) {
      for (let a = 0; a < 8; a++) {
        right[a] += row[a] * value;
        for (let b = 0; b < 8; b++) normal[a][b] += row[a] * row[b];
      }
    }
  });
  const tamed = [...solve(normal, right), 1];
  const before = [p.scale, 0, -p.scale * p.shift[0], 0, p.scale, -p.scale * p.shift[1], 0, 0, 1];
  const after = [1 / q.scale, 0, q.shift[0], 0, 1 / q.scale, q.shift[1], 0, 0, 1];
  const whole = multiply(after, multiply(tamed, before));
  return whole.map((value) => value / whole[8]);
}

/** Applies nine numbers to a point. `mapPoint([1,0,0,0,1,0,0,0,1], [3, 4])` is [3, 4]. */
export function mapPoint(h: readonly number[], [x, y]: readonly [number, number]): [number, number] {
  const w = h[6] * x + h[7] * y + h[8];
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
}
