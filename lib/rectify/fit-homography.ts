import type { PointMm, PointPx } from '../units';
import type { Homography } from './homography';
import { solveLinear } from './solve-linear';

/** A place on the card and where the photo shows it. */
export interface PlanePair {
  readonly card: PointMm;
  readonly image: PointPx;
}

/**
 * Least squares homography card → image from four or more pairs: direct linear transform with both sides shifted and
 * scaled first (Hartley 1997, "In defence of the eight-point algorithm").
 *
 * @param pairs at least four, no three on one line among four of them
 * @returns the map, or null when the pairs do not fix one
 * @example fitHomography(fourCorners) // image from card
 */
export function fitHomography(pairs: readonly PlanePair[]): Homography | null {
  if (pairs.length < 4) return null;
  const card = normaliser(pairs.map((p) => [p.card.acrossMm, p.card.downMm]));
  const image = normaliser(pairs.map((p) => [p.image.column, p.image.row]));
  const normal = Array.from({ length: 8 }, () => new Array<number>(8).fill(0));
  const right = new Array<number>(8).fill(0);
  for (const pair of pairs) {
    const [x, y] = card.apply(pair.card.acrossMm, pair.card.downMm);
    const [u, v] = image.apply(pair.image.column, pair.image.row);
    accumulate(normal, right, [x, y, 1, 0, 0, 0, -u * x, -u * y], u);
    accumulate(normal, right, [0, 0, 0, x, y, 1, -v * x, -v * y], v);
  }
  const h = solveLinear(normal, right);
  return h && denormalise([...h, 1], card, image);
}

interface Normaliser {
  readonly shift: readonly [number, number];
  readonly scale: number;
  apply(x: number, y: number): [number, number];
}

function normaliser(points: readonly (readonly [number, number])[]): Normaliser {
  const n = points.length;
  const cx = points.reduce((sum, p) => sum + p[0], 0) / n;
  const cy = points.reduce((sum, p) => sum + p[1], 0) / n;
  const spread = points.reduce((sum, p) => sum + Math.hypot(p[0] - cx, p[1] - cy), 0) / n || 1;
  const scale = Math.SQRT2 / spread;
  return { shift: [cx, cy], scale, apply: (x, y) => [(x - cx) * scale, (y - cy) * scale] };
}

function accumulate(normal: number[][], right: number[], row: readonly number[], target: number): void {
  for (let i = 0; i < row.length; i++) {
    right[i] += row[i] * target;
    for (let j = 0; j < row.length; j++) normal[i][j] += row[i] * row[j];
  }
}

/** image⁻¹ · h · card, scaled so that the last number is 1. */
function denormalise(h: readonly number[], card: Normaliser, image: Normaliser): Homography | null {
  const s = card.scale;
  const [cx, cy] = card.shift;
  const right = [0, 3, 6].flatMap((r) => {
    const [a, b, c] = h.slice(r, r + 3);
    return [a * s, b * s, c - a * s * cx - b * s * cy];
  });
  const [ix, iy] = image.shift;
  const full = [0, 1, 2].flatMap((c) => [
    right[c] / image.scale + ix * right[6 + c],
    right[3 + c] / image.scale + iy * right[6 + c],
    right[6 + c],
  ]);
  const ordered = [0, 1, 2].flatMap((r) => [full[r], full[3 + r], full[6 + r]]);
  const last = ordered[8];
  if (!Number.isFinite(last) || Math.abs(last) < 1e-12) return null;
  return ordered.map((value) => value / last) as unknown as Homography;
}
