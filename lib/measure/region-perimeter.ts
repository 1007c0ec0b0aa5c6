import { lineLengthMm } from './line-length';
import type { Rings } from './region-area';

/**
 * Length of all edges of a region, holes included.
 *
 * @param rings rings in mm
 * @returns mm
 * @example regionPerimeterMm([{ hole: false, ring: [{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 4 }] }]) // 12
 */
export function regionPerimeterMm(rings: Rings): number {
  return rings.reduce((sum, { ring }) => sum + lineLengthMm(ring, true), 0);
}
