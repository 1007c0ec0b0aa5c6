import type { LineMm } from '../units';
import { EDGE_SPACING_MM } from './constants';
import type { Rings } from './region-area';
import { resampleLine } from './resample-line';

/**
 * The rings of a region, closely spaced and taken through a mapping of lines.
 *
 * @param rings rings in mm
 * @param map what happens to each line; it keeps the number of points
 * @param spacingMm spacing of the points before mapping, > 0; 0.1 mm unless told
 * @returns the mapped rings, holes still holes
 * @example mapRings([{ hole: false, ring: [{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 4 }] }], (line) => line, 1)[0].ring.length // 12
 */
export function mapRings(rings: Rings, map: (line: LineMm) => LineMm, spacingMm: number = EDGE_SPACING_MM): Rings {
  return rings.map(({ ring, hole }) => ({ ring: map(resampleLine(ring, spacingMm, true)), hole }));
}
