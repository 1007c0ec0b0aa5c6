import type { LineMm, PointMm } from '../units';

/** Squared distance from a point to the straight piece between two points. */
function squaredToPiece(point: PointMm, from: PointMm, to: PointMm): number {
  const across = to.acrossMm - from.acrossMm;
  const down = to.downMm - from.downMm;
  const squared = across * across + down * down;
  const along = (point.acrossMm - from.acrossMm) * across + (point.downMm - from.downMm) * down;
  const share = squared === 0 ? 0 : Math.min(1, Math.max(0, along / squared));
  const offAcross = point.acrossMm - from.acrossMm - share * across;
  const offDown = point.downMm - from.downMm - share * down;
  return offAcross * offAcross + offDown * offDown;
}

/**
 * Shortest distance from a point to an open line, ends included.
 *
 * @param point position in mm
 * @param line at least one point, mm
 * @returns mm
 * @throws RangeError where the line has no points
 * @example distanceToLineMm({ acrossMm: 0, downMm: 2 }, [{ acrossMm: -1, downMm: 0 }, { acrossMm: 1, downMm: 0 }]) // 2
 */
export function distanceToLineMm(point: PointMm, line: LineMm): number {
  if (line.length === 0) throw new RangeError('distanceToLineMm: line needs at least one point, received 0');
  let smallest = squaredToPiece(point, line[0], line[0]);
  for (let index = 1; index < line.length; index += 1) {
    smallest = Math.min(smallest, squaredToPiece(point, line[index - 1], line[index]));
  }
  return Math.sqrt(smallest);
}
