import type { LineMm, PointMm } from '../units';

/** Where a point lies beside a line. */
export interface BesideLine {
  /** Distance to the line, mm: positive on its left looking along it with down pointing down, negative on its right. */
  readonly mm: number;
  /** The nearest place is one of the line's ends: the point lies before or behind it and not beside it. */
  readonly atEnd: boolean;
}

/**
 * Signed distance from a point to an open line. The side is told by the line's direction around the nearest point, so that a
 * rounded corner has one inside and one outside.
 *
 * @param point position in mm
 * @param line at least two points, closer together than anything that matters (resample it first)
 * @returns distance and side
 * @throws RangeError where the line has fewer than two points
 * @example besideLine({ acrossMm: 1, downMm: 3 }, [{ acrossMm: 0, downMm: 0 }, { acrossMm: 0, downMm: 3 }, { acrossMm: 0, downMm: 6 }]).mm // 1
 */
export function besideLine(point: PointMm, line: LineMm): BesideLine {
  if (line.length < 2) throw new RangeError(`besideLine: line needs at least two points, received ${line.length}`);
  let nearest = 0;
  let squared = Infinity;
  for (let i = 0; i < line.length; i++) {
    const across = line[i].acrossMm - point.acrossMm;
    const down = line[i].downMm - point.downMm;
    if (across * across + down * down < squared) {
      squared = across * across + down * down;
      nearest = i;
    }
  }
  const from = line[Math.max(0, nearest - 1)];
  const to = line[Math.min(line.length - 1, nearest + 1)];
  const at = line[nearest];
  const [across, down] = [to.acrossMm - from.acrossMm, to.downMm - from.downMm];
  const left = across * (at.downMm - point.downMm) - down * (at.acrossMm - point.acrossMm);
  return { mm: Math.sign(left) * Math.sqrt(squared), atEnd: nearest === 0 || nearest === line.length - 1 };
}
