import type { UprightPhoto } from '../photo/upright-photo';
import type { PointPx } from '../units';
import { halfLevelCrossing, sampleEdgeProfile } from './edge-profile';
import { fitLine, intersectLines, type LinePx } from './fit-line';
import type { FoundFiducial } from './found-fiducial';

/** Points tried on each side of a square; the parts next to the corners are left out. */
const POINTS_PER_SIDE = 24;
const SIDE_MARGIN = 0.14;
/** A side that keeps fewer of its points is not believed. */
const LEAST_KEPT = 8;
/** How far across the edge is looked, in cells of the square: the black border is one cell wide. */
const LOOK_CELLS = 0.8;
const CELLS_PER_SIDE = 6;

/**
 * Corners of a fiducial at the photo's full resolution: each side is found as a straight line through half-level
 * crossings in linear light, neighbouring lines are crossed. Done twice, the second time from the better lines.
 *
 * @param photo the upright photo
 * @param coarse the fiducial with coarse corners in photo pixels
 * @returns the fiducial with fine corners, or null when a side cannot be seen well enough
 * @example refineCorners(photo, coarse)?.cornersPx[0] // { row: 120.43, column: 88.07 }
 */
export function refineCorners(photo: UprightPhoto, coarse: FoundFiducial): FoundFiducial | null {
  const once = refineOnce(photo, coarse, LOOK_CELLS);
  return once && refineOnce(photo, once, LOOK_CELLS);
}

function refineOnce(photo: UprightPhoto, from: FoundFiducial, lookCells: number): FoundFiducial | null {
  const lines: LinePx[] = [];
  for (let side = 0; side < 4; side++) {
    const line = refineSide(photo, from.cornersPx[side], from.cornersPx[(side + 1) % 4], centreOf(from), lookCells);
    if (!line) return null;
    lines.push(line);
  }
  const cornersPx: PointPx[] = [];
  for (let corner = 0; corner < 4; corner++) {
    const crossing = intersectLines(lines[(corner + 3) % 4], lines[corner]);
    if (!crossing) return null;
    cornersPx.push(crossing);
  }
  return { id: from.id, cornersPx };
}

function refineSide(photo: UprightPhoto, from: PointPx, to: PointPx, centre: PointPx, lookCells: number): LinePx | null {
  const lengthPx = Math.hypot(to.row - from.row, to.column - from.column);
  if (lengthPx < CELLS_PER_SIDE) return null;
  const outward = outwardNormal(from, to, centre);
  const halfLengthPx = Math.max(2, (lengthPx / CELLS_PER_SIDE) * lookCells);
  const points: PointPx[] = [];
  for (let i = 0; i < POINTS_PER_SIDE; i++) {
    const share = SIDE_MARGIN + ((1 - 2 * SIDE_MARGIN) * i) / (POINTS_PER_SIDE - 1);
    const at = { row: from.row + share * (to.row - from.row), column: from.column + share * (to.column - from.column) };
    const profile = sampleEdgeProfile(photo, at, outward, halfLengthPx, 0.5);
    const offset = profile && halfLevelCrossing(profile);
    if (offset !== null) points.push({ row: at.row + offset * outward.row, column: at.column + offset * outward.column });
  }
  return points.length < LEAST_KEPT ? null : fitLine(points);
}

function outwardNormal(from: PointPx, to: PointPx, centre: PointPx): PointPx {
  const length = Math.hypot(to.row - from.row, to.column - from.column);
  const normal = { row: (to.column - from.column) / length, column: -(to.row - from.row) / length };
  const outward = (from.row - centre.row) * normal.row + (from.column - centre.column) * normal.column;
  return outward > 0 ? normal : { row: -normal.row, column: -normal.column };
}

function centreOf(fiducial: FoundFiducial): PointPx {
  const sum = fiducial.cornersPx.reduce((s, p) => ({ row: s.row + p.row, column: s.column + p.column }));
  return { row: sum.row / 4, column: sum.column / 4 };
}
