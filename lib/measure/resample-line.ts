import type { LineMm, PointMm } from '../units';
import { distanceMm, lineLengthMm } from './line-length';

function between(from: PointMm, to: PointMm, share: number): PointMm {
  return {
    acrossMm: from.acrossMm + share * (to.acrossMm - from.acrossMm),
    downMm: from.downMm + share * (to.downMm - from.downMm),
  };
}

/**
 * Points at equal distances along a line, so that every millimetre of edge has the same weight.
 *
 * @param line open line or ring in mm
 * @param spacingMm wanted spacing, > 0; the real one is the nearest that divides the length evenly
 * @param closed true for a ring: the first point starts it and is not repeated; false keeps both ends
 * @returns at least three points for a ring and two for a line; [] where the line has no length
 * @example resampleLine([{ acrossMm: 0, downMm: 0 }, { acrossMm: 1, downMm: 0 }], 0.5).length // 3
 */
export function resampleLine(line: LineMm, spacingMm: number, closed = false): PointMm[] {
  if (!(spacingMm > 0)) throw new RangeError(`resampleLine: spacingMm must be > 0, received ${spacingMm}`);
  const length = lineLengthMm(line, closed);
  if (length === 0) return [];
  const pieces = Math.max(closed ? 3 : 1, Math.round(length / spacingMm));
  const count = closed ? pieces : pieces + 1;
  const corners = closed ? [...line, line[0]] : line;
  const travelled = corners.map(() => 0);
  for (let index = 1; index < corners.length; index += 1) {
    travelled[index] = travelled[index - 1] + distanceMm(corners[index - 1], corners[index]);
  }
  let side = 0;
  return Array.from({ length: count }, (_, index) => {
    const wanted = (index * length) / pieces;
    while (side < corners.length - 2 && travelled[side + 1] < wanted) side += 1;
    const sideLength = travelled[side + 1] - travelled[side];
    const share = sideLength === 0 ? 0 : Math.min(1, (wanted - travelled[side]) / sideLength);
    return between(corners[side], corners[side + 1], share);
  });
}
