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
/** The second look is shorter, so that blurred white cells inside the border do not brighten its dark end. */
const LOOK_AGAIN_CELLS = 0.6;
const SHORTEST_SIDE_PX = 6;
/** A 4 × 4 marker with its border: the kind that the card bears. */
const CARD_CELLS_PER_SIDE = 6;
/** A corner that moves farther than this share of a cell has jumped to another edge. */
const MOST_MOVE_CELLS = 0.7;

/**
 * Corners of a fiducial at the photo's full resolution: each side is found as a straight line through half-level
 * crossings in linear light, neighbouring lines are crossed. Done twice, the second time from the better lines.
 *
 * @param photo the upright photo
 * @param coarse the fiducial with coarse corners in photo pixels
 * @param cellsPerSide cells along a side, border included: bits of the dictionary + 2
 * @returns the fiducial with fine corners, or null when a side cannot be seen well enough
 * @example refineCorners(photo, coarse)?.cornersPx[0] // { row: 120.43, column: 88.07 }
 */
export function refineCorners(photo: UprightPhoto, coarse: FoundFiducial, cellsPerSide = CARD_CELLS_PER_SIDE): FoundFiducial | null {
  const once = refineOnce(photo, coarse, LOOK_CELLS / cellsPerSide);
  const twice = once && refineOnce(photo, once, LOOK_AGAIN_CELLS / cellsPerSide);
  return twice && movedLittle(coarse, twice, cellsPerSide) ? twice : null;
}

function movedLittle(from: FoundFiducial, to: FoundFiducial, cellsPerSide: number): boolean {
  return from.cornersPx.every((corner, i) => {
    const next = from.cornersPx[(i + 1) % 4];
    const sidePx = Math.hypot(next.row - corner.row, next.column - corner.column);
    const movedPx = Math.hypot(to.cornersPx[i].row - corner.row, to.cornersPx[i].column - corner.column);
    return movedPx <= Math.max(2, (MOST_MOVE_CELLS * sidePx) / cellsPerSide);
  });
}

function refineOnce(photo: UprightPhoto, from: FoundFiducial, lookShare: number): FoundFiducial | null {
  const lines: LinePx[] = [];
  for (let side = 0; side < 4; side++) {
    const line = refineSide(photo, from.cornersPx[side], from.cornersPx[(side + 1) % 4], centreOf(from), lookShare);
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

function refineSide(photo: UprightPhoto, from: PointPx, to: PointPx, centre: PointPx, lookShare: number): LinePx | null {
  const lengthPx = Math.hypot(to.row - from.row, to.column - from.column);
  if (lengthPx < SHORTEST_SIDE_PX) return null;
  const outward = outwardNormal(from, to, centre);
  const halfLengthPx = Math.max(2, lengthPx * lookShare);
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
