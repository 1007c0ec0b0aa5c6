import type { PointMm } from '../units';
import { EDGE_SPACING_MM } from './constants';
import type { Rings } from './region-area';
import { resampleLine } from './resample-line';

/**
 * Equally spaced points on every edge of a region, one closed list per ring.
 *
 * @param rings rings in mm
 * @param spacingMm spacing, > 0; 0.1 mm unless told
 * @returns one list per ring that has a length
 * @example regionEdge([{ hole: false, ring: [{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 4 }] }], 1)[0].length // 12
 */
export function regionEdge(rings: Rings, spacingMm: number = EDGE_SPACING_MM): PointMm[][] {
  return rings.map(({ ring }) => resampleLine(ring, spacingMm, true)).filter((points) => points.length > 0);
}
