import type { PointPx } from '../units';
import { MAD_TO_SIGMA } from './constants';
import { medianOf } from './median-of';

/** A straight line as a point on it and a unit direction. */
export interface LinePx {
  readonly through: PointPx;
  readonly direction: PointPx;
}

/** Residual (in robust standard deviations) beyond which a point is left out. */
const OUTLIER_SIGMAS = 3;
const ROUNDS = 3;
/** Points closer than this are never outliers: it is the noise of a good edge. */
const FLOOR_PX = 0.05;

/**
 * Total least squares line through points, outliers left out (three rounds, median absolute deviation). The first
 * round starts from the line between two of the points that half of them lie nearest to (Rousseeuw 1984, least median
 * of squares): a mean line would already be pulled toward a neighbouring edge.
 *
 * @param points at least two, pixels
 * @example fitLine([{ row: 0, column: 0 }, { row: 1, column: 1 }]).direction // ±(0.7071, 0.7071)
 */
export function fitLine(points: readonly PointPx[]): LinePx {
  if (points.length < 2) throw new RangeError(`fitLine: at least two points are needed, received ${points.length}`);
  let kept: readonly PointPx[] = [];
  let line = leastMedianLine(points);
  for (let round = 0; round < ROUNDS; round++) {
    const residuals = points.map((point) => Math.abs(offsetFrom(line, point)));
    const sigma = Math.max(FLOOR_PX, MAD_TO_SIGMA * medianOf(residuals));
    const next = points.filter((_, i) => residuals[i] <= OUTLIER_SIGMAS * sigma);
    if (next.length === kept.length || next.length < 2) break;
    kept = next;
    line = leastSquares(kept);
  }
  return line;
}

/**
 * Where two lines cross.
 *
 * @returns the point, pixels; null when the lines are (nearly) parallel
 * @example intersectLines({ through: { row: 2, column: 0 }, direction: { row: 0, column: 1 } }, { through: { row: 0, column: 3 }, direction: { row: 1, column: 0 } }) // { row: 2, column: 3 }
 */
export function intersectLines(a: LinePx, b: LinePx): PointPx | null {
  const cross = a.direction.row * b.direction.column - a.direction.column * b.direction.row;
  if (Math.abs(cross) < 1e-6) return null;
  const dr = b.through.row - a.through.row;
  const dc = b.through.column - a.through.column;
  const along = (dr * b.direction.column - dc * b.direction.row) / cross;
  return { row: a.through.row + along * a.direction.row, column: a.through.column + along * a.direction.column };
}

/** Tries lines between points half of the list and a third of the list apart: far enough to fix a direction. */
function leastMedianLine(points: readonly PointPx[]): LinePx {
  let best = leastSquares(points);
  let bestPx = medianOf(points.map((point) => Math.abs(offsetFrom(best, point))));
  for (const apart of [points.length >> 1, Math.floor(points.length / 3)]) {
    for (let i = 0; apart > 0 && i + apart < points.length; i += 2) {
      const line = leastSquares([points[i], points[i + apart]]);
      const px = medianOf(points.map((point) => Math.abs(offsetFrom(line, point))));
      if (px < bestPx) [best, bestPx] = [line, px];
    }
  }
  return best;
}

function leastSquares(points: readonly PointPx[]): LinePx {
  const n = points.length;
  const row = points.reduce((sum, p) => sum + p.row, 0) / n;
  const column = points.reduce((sum, p) => sum + p.column, 0) / n;
  let rr = 0;
  let rc = 0;
  let cc = 0;
  for (const p of points) {
    rr += (p.row - row) ** 2;
    rc += (p.row - row) * (p.column - column);
    cc += (p.column - column) ** 2;
  }
  const angle = 0.5 * Math.atan2(2 * rc, cc - rr);
  return { through: { row, column }, direction: { row: Math.sin(angle), column: Math.cos(angle) } };
}

function offsetFrom(line: LinePx, point: PointPx): number {
  return (point.row - line.through.row) * line.direction.column - (point.column - line.through.column) * line.direction.row;
}
