import type { PointMm } from '../units';
import { EDGE_SPACING_MM, SPIKE_WIDTH_MM } from './constants';

/** The farthest place of an edge, and how much of the edge vouches for it. */
export interface EdgePeak {
  readonly valueMm: number;
  readonly at: PointMm;
  /** Length of edge that comes within `contendMm` of the peak: the places among which the largest was picked. */
  readonly contendersMm: number;
  /** How far the region still extends where it is SPIKE_WIDTH_MM wide; equal to valueMm for a blunt front. */
  readonly supportedMm: number;
}

/**
 * Walks down both flanks of a peak, always on the higher one, until they stand a spike's width apart.
 * A closed edge that never gets so wide supports nothing beyond its lowest point.
 */
function supportedAt(points: readonly PointMm[], heights: readonly number[], top: number): number {
  const count = points.length;
  let left = top;
  let right = top;
  let level = heights[top];
  for (let step = 1; step < count; step += 1) {
    const nextLeft = (left - 1 + count) % count;
    const nextRight = (right + 1) % count;
    if (heights[nextLeft] >= heights[nextRight]) left = nextLeft;
    else right = nextRight;
    level = Math.min(level, heights[left], heights[right]);
    const width = Math.hypot(
      points[left].acrossMm - points[right].acrossMm,
      points[left].downMm - points[right].downMm,
    );
    if (width >= SPIKE_WIDTH_MM) break;
  }
  return level;
}

/**
 * The largest height over all edges of a region.
 *
 * @param edges closed lists of equally spaced points, mm
 * @param heights for each point how far it reaches (distance to a margin, or along an axis), mm
 * @param contendMm places less than this below the peak could as well have been the largest, ≥ 0
 * @returns the peak, or null where there are no points
 * @example edgePeak([[{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 4 }]], [[1, 5, 2]], 0.1).valueMm // 5
 */
export function edgePeak(
  edges: readonly (readonly PointMm[])[],
  heights: readonly (readonly number[])[],
  contendMm: number,
): EdgePeak | null {
  let edge = -1;
  let top = -1;
  heights.forEach((list, index) =>
    list.forEach((height, position) => {
      if (edge < 0 || height > heights[edge][top]) [edge, top] = [index, position];
    }),
  );
  if (edge < 0) return null;
  const valueMm = heights[edge][top];
  const contenders = heights.flat().filter((height) => height >= valueMm - contendMm).length;
  return {
    valueMm,
    at: edges[edge][top],
    contendersMm: contenders * EDGE_SPACING_MM,
    supportedMm: supportedAt(edges[edge], heights[edge], top),
  };
}
