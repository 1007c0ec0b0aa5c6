import { distanceToLineMm } from '../measure/distance-to-line';
import { regionEdge } from '../measure/region-edge';
import type { Region } from '../segment/segmentation';
import type { LineMm, PointMm } from '../units';

/** Where the redness reaches farthest from the margin, and the margin point it is measured from. */
export interface ReachLine {
  readonly from: PointMm;
  readonly to: PointMm;
  readonly lengthMm: number;
}

/**
 * The dimension line of the reach.
 *
 * @param region the redness
 * @param margin the nail-fold margin
 * @returns null where the region has no edge
 * @example reachLine(region, margin)?.lengthMm // 7.5
 */
export function reachLine(region: Region, margin: LineMm): ReachLine | null {
  let best: ReachLine | null = null;
  for (const to of regionEdge(region.rings, SPACING_MM).flat()) {
    const lengthMm = distanceToLineMm(to, margin);
    if (best === null || lengthMm > best.lengthMm) best = { from: nearest(margin, to), to, lengthMm };
  }
  return best;
}

/** Fine enough for a drawing. */
const SPACING_MM = 0.2;

function nearest(line: LineMm, point: PointMm): PointMm {
  return line.reduce((best, one) => (offMm(one, point) < offMm(best, point) ? one : best));
}

const offMm = (a: PointMm, b: PointMm): number => Math.hypot(a.acrossMm - b.acrossMm, a.downMm - b.downMm);
