import type { LineMm, PointMm, RingMm } from '../units';

/** Beyond this a mitre would stick out like a thorn; corners of glyphs and arcs stay well below it. */
const LONGEST_MITRE = 3;

function normal(from: PointMm, to: PointMm): { across: number; down: number } {
  const across = to.acrossMm - from.acrossMm;
  const down = to.downMm - from.downMm;
  const length = Math.hypot(across, down);
  return { across: down / length, down: -across / length };
}

/** The line shifted sideways by `distance`, with mitred corners. */
function offsetLine(line: LineMm, distance: number, closed: boolean): PointMm[] {
  const last = line.length - 1;
  return line.map((point, place) => {
    const before = place > 0 ? line[place - 1] : closed ? line[last] : null;
    const after = place < last ? line[place + 1] : closed ? line[0] : null;
    const a = before ? normal(before, point) : normal(point, after as PointMm);
    const b = after ? normal(point, after) : a;
    const across = a.across + b.across;
    const down = a.down + b.down;
    const scale = Math.min(2 / (across * across + down * down), LONGEST_MITRE / Math.hypot(across, down));
    return { acrossMm: point.acrossMm + distance * across * scale, downMm: point.downMm + distance * down * scale };
  });
}

/**
 * The area a pen of a given width leaves along a line: mitred corners, flat ends.
 *
 * @param line at least two points in mm, none twice in a row; when first and last are the same the line is closed
 * @param widthMm of the pen, mm
 * @returns rings of one shape, clockwise: one for an open line, two (outline and hole) for a closed one. Refuses a line
 *   of one point with a RangeError. Assumes the line does not cross itself.
 * @example strokeOutline([{ acrossMm: 0, downMm: 0 }, { acrossMm: 4, downMm: 0 }], 0.5)[0].length // 4
 */
export function strokeOutline(line: LineMm, widthMm: number): RingMm[] {
  if (line.length < 2) throw new RangeError(`strokeOutline: at least 2 points are needed, received ${line.length}`);
  const first = line[0];
  const end = line[line.length - 1];
  const closed = first.acrossMm === end.acrossMm && first.downMm === end.downMm;
  const points = closed ? line.slice(0, -1) : line;
  const left = offsetLine(points, widthMm / 2, closed);
  const right = offsetLine(points, -widthMm / 2, closed).reverse();
  return closed ? [left, right] : [[...left, ...right]];
}
