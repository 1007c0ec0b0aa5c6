import type { LineMm } from '../units';
import { EDGE_SPACING_MM } from './constants';
import { distanceToLineMm } from './distance-to-line';
import { resampleLine } from './resample-line';

/**
 * Gaps between the nail-fold margin and the cut edge of the plate, at equal steps along the margin.
 *
 * @param margin the fold's side, at least one point, mm
 * @param cutEdge at least one point, mm
 * @returns distances to the nearest point of the cut edge, mm
 * @example grooveGapsMm([{ acrossMm: 0, downMm: 0 }, { acrossMm: 0, downMm: 0.2 }], [{ acrossMm: 2, downMm: 0 }, { acrossMm: 2, downMm: 5 }]) // [2, 2, 2]
 */
export function grooveGapsMm(margin: LineMm, cutEdge: LineMm): number[] {
  return resampleLine(margin, EDGE_SPACING_MM).map((point) => distanceToLineMm(point, cutEdge));
}
