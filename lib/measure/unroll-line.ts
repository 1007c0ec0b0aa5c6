import type { LineMm, PointMm } from '../units';
import { arcLengthMm } from './arc-length';
import { onCylinder } from './on-cylinder';
import type { ToeCylinder } from './toe-cylinder';

/**
 * Lays a line that was drawn on the map out on the flat skin of the cylinder.
 *
 * @param line points on the card, mm, closely spaced (a long straight side would unroll to a straight side)
 * @param cylinder the toe
 * @returns acrossMm is arc length from the centre line, downMm position along the toe; areas and lengths are the skin's
 * @example unrollLine([{ acrossMm: 4, downMm: 3 }], { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10], centreMm: 4, centreSlope: 0 })[0].acrossMm // 0
 */
export function unrollLine(line: LineMm, cylinder: ToeCylinder): PointMm[] {
  return line.map((point) => {
    const { offsetMm, alongMm, radiusMm } = onCylinder(point, cylinder);
    return { acrossMm: arcLengthMm(offsetMm, radiusMm), downMm: alongMm };
  });
}
