import type { LineMm } from '../units';

/**
 * Length of an open line, or of a ring when it is closed.
 *
 * @param line points in mm
 * @param closed true joins the last point to the first (perimeter of a ring)
 * @returns mm; 0 for fewer than two points
 * @example lineLengthMm([{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 4 }]) // 5
 */
export function lineLengthMm(line: LineMm, closed = false): number {
  let length = 0;
  for (let index = 1; index < line.length; index += 1) {
    length += Math.hypot(
      line[index].acrossMm - line[index - 1].acrossMm,
      line[index].downMm - line[index - 1].downMm,
    );
  }
  if (closed && line.length > 1) {
    const first = line[0];
    const last = line[line.length - 1];
    length += Math.hypot(first.acrossMm - last.acrossMm, first.downMm - last.downMm);
  }
  return length;
}
