import { gridPixel } from '../rectify/grid-pixel';
import { gridPoint } from '../rectify/grid-point';
import type { LineMm, PointMm, PointPx } from '../units';
import { cheapestPath, type EdgeCost } from './cheapest-path';

/** A click lies this far from the edge it means, a finger's a little farther. Ours. */
const SETTLE_MM = 0.8;
/** What it costs to settle that far off, against a cost of 1 where there is no edge. Ours. */
const SETTLE_PULL = 0.3;
/** How far a line may swing out beyond the two points it joins. Ours: the bow of a nail's corner. */
const SNAP_BEYOND_MM = 3;
/** Length of the running mean along the path. Ours: the blur of a home photo (0.1–0.35 mm) is no edge's own shape. */
const SNAP_SMOOTH_MM = 0.8;

/** A point that a person has set on the photo. */
export interface SetPoint extends PointMm {
  /** Moved with care: the line goes through it exactly. Otherwise it settles on the edge beside it first. */
  readonly held: boolean;
}

/**
 * A line along edges of the picture through points that a person has set: the cheapest path from each to the next.
 *
 * @param edge how little a line costs through each pixel of the map
 * @param points in the order in which they are joined, mm; those outside the map count at its border
 * @param closed does the line come back to its first point?
 * @returns the line, mm, the last point of a closed one joined to the first and not repeated; null for fewer than two
 *   points, three of a closed one
 * @example snapLine(edge, [{ acrossMm: 30, downMm: 20, held: false }, { acrossMm: 31, downMm: 28, held: false }], false)
 */
export function snapLine(edge: EdgeCost, points: readonly SetPoint[], closed: boolean): LineMm | null {
  if (points.length < (closed ? 3 : 2)) return null;
  const anchors = points.map((point) => (point.held ? pixelOf(edge, point) : settle(edge, pixelOf(edge, point))));
  const beyondPx = Math.round(SNAP_BEYOND_MM * edge.grid.pxPerMm);
  const pairs = anchors.slice(closed ? 0 : 1).map((to, at) => (closed ? [to, anchors[(at + 1) % anchors.length]] : [anchors[at], to]));
  const stretches = pairs.map(([from, to]) => cheapestPath(edge, from, to, beyondPx));
  // Each stretch begins where the one before ended.
  const path = stretches.flatMap((stretch, at) => (at === 0 && !closed ? stretch : stretch.slice(1)));
  const heldAt = new Set(anchors.filter((_, at) => points[at].held).map(({ row, column }) => `${row} ${column}`));
  const isFixed = ({ row, column }: PointPx, at: number) => heldAt.has(`${row} ${column}`) || (!closed && (at === 0 || at === path.length - 1));
  return smoothed(path, path.map(isFixed), Math.round((SNAP_SMOOTH_MM * edge.grid.pxPerMm) / 2)).map(({ row, column }) => gridPoint(edge.grid, row, column));
}

function pixelOf({ grid }: EdgeCost, point: PointMm): PointPx {
  const { row, column } = gridPixel(grid, point);
  const within = (value: number, size: number) => Math.min(size - 1, Math.max(0, Math.round(value)));
  return { row: within(row, grid.heightPx), column: within(column, grid.widthPx) };
}

/** The cheapest pixel nearby; the farther off, the cheaper it has to be. */
function settle({ grid, cost }: EdgeCost, at: PointPx): PointPx {
  const reach = Math.round(SETTLE_MM * grid.pxPerMm);
  let best = at;
  let least = Infinity;
  for (let row = Math.max(0, at.row - reach); row <= Math.min(grid.heightPx - 1, at.row + reach); row++) {
    for (let column = Math.max(0, at.column - reach); column <= Math.min(grid.widthPx - 1, at.column + reach); column++) {
      const share = Math.hypot(row - at.row, column - at.column) / reach;
      const total = cost[row * grid.widthPx + column] + SETTLE_PULL * share ** 2;
      if (share > 1 || total >= least) continue;
      least = total;
      best = { row, column };
    }
  }
  return best;
}

/** Running mean along the path, as a ring: steps from pixel to pixel are no property of the edge. What is fixed stays. */
function smoothed(path: readonly PointPx[], fixed: readonly boolean[], half: number): PointPx[] {
  const n = path.length;
  return path.map((_, at) => {
    let reach = 0;
    while (reach < half && !fixed[(at + reach) % n] && !fixed[(at - reach + n) % n]) reach++;
    let [row, column] = [0, 0];
    for (let k = at - reach; k <= at + reach; k++) {
      const one = path[((k % n) + n) % n];
      row += one.row;
      column += one.column;
    }
    return { row: row / (2 * reach + 1), column: column / (2 * reach + 1) };
  });
}
