import type { LineMm, PointMm } from '../units';
import { CAP_SHARE } from './constants';
import { onCylinder } from './on-cylinder';
import type { ToeCylinder } from './toe-cylinder';

/**
 * The same line in the toe's frame, still projected, but kept from going past the cap.
 *
 * @param line points on the card, mm, closely spaced
 * @param cylinder the toe
 * @returns acrossMm is distance from the centre line, at most CAP_SHARE of the half width
 * @example holdAtCap([{ acrossMm: 40, downMm: 3 }], { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10], centreMm: 4, centreSlope: 0 })[0].acrossMm // 9.7
 */
export function holdAtCap(line: LineMm, cylinder: ToeCylinder): PointMm[] {
  return line.map((point) => {
    const { offsetMm, alongMm, radiusMm } = onCylinder(point, cylinder);
    const limitMm = CAP_SHARE * radiusMm;
    return { acrossMm: Math.min(limitMm, Math.max(-limitMm, offsetMm)), downMm: alongMm };
  });
}
