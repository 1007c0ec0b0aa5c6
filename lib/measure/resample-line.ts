import type { LineMm, PointMm } from '../units';
import { lineLengthMm } from './line-length';

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
 * Example: `resampleLine([{ acrossMm: 0, downMm: 0 }, { acrossMm: 1, downMm: 0 }], 0.5).length` is 3.
 */
export function resampleLine(line: LineMm, spacingMm: number, closed = false): PointMm[] {
  if (!(spacingMm > 0)) throw new RangeError(`resampleLine: spacingMm must be > 0, received ${spacingMm}`);
  const length = lineLengthMm(line, closed);
  if (length === 0) return [];
  const pieces = Math.max(closed ? 3 : 1, Math.round(length / spacingMm));
  const count = closed ? pieces : pieces + 1;
  const points: PointMm[] = [];
  let corner = 0;
  let travelled = 0;
  for (let index = 0; index < count; index += 1) {
    const wanted = (index * length) / pieces;
    for (;;) {
      const from = line[corner];
      const to = line[(corner + 1) % line.length];
      const side = Math.hypot(to.acrossMm - from.acrossMm, to.downMm - from.downMm);
      const isLastSide = corner === line.length - (closed ? 1 : 2);
      if (travelled + side >= wanted || isLastSide) {
        points.push(between(from, to, side === 0 ? 0 : Math.min(1, (wanted - travelled) / side)));
        break;
      }
      travelled += side;
      corner += 1;
    }
  }
  return points;
}
