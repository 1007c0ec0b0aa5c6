import type { LineMm, PointMm, RingMm } from '../units';
import { PLATE_SPACING_MM, REGISTRATION_KEPT_SHARE, REGISTRATION_ROUNDS } from './constants';
import { solveLinear } from '../rectify/solve-linear';
import { resampleLine } from './resample-line';

/** A turn about a point and a shift: where the toe of one photo lies on another. */
export interface ToeMove {
  readonly about: PointMm;
  readonly to: PointMm;
  readonly turnRad: number;
  /** What is left over between the two plates' outlines, root mean square, mm. */
  readonly residualMm: number;
}

/**
 * Moves a point of the earlier photo's toe to its place on the later one.
 *
 * @param move from `registerToes`
 * @param point on the earlier card, mm
 * @example movePoint({ about: { acrossMm: 0, downMm: 0 }, to: { acrossMm: 1, downMm: 0 }, turnRad: 0, residualMm: 0 }, { acrossMm: 2, downMm: 5 }) // { acrossMm: 3, downMm: 5 }
 */
export function movePoint({ about, to, turnRad }: Pick<ToeMove, 'about' | 'to' | 'turnRad'>, point: PointMm): PointMm {
  const [across, down] = [point.acrossMm - about.acrossMm, point.downMm - about.downMm];
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  return { acrossMm: to.acrossMm + across * cos - down * sin, downMm: to.downMm + across * sin + down * cos };
}

/**
 * Lays the nail plate of an earlier photo upon the same plate on a later one: the plate is the part of a toe that neither
 * swells nor heals. Points are matched with the nearest tangent in turns, the worst left out, and turn and shift solved for.
 *
 * @param earlier straightened outline of the plate on the earlier photo, mm
 * @param later the same on the later photo
 * @returns the move, or null where an outline is empty
 * Source: Chen and Medioni, Image and Vision Computing 1992;10:145 (iterative closest point, onto tangents); trimmed: Chetverikov et al., ICPR 2002.
 * @example registerToes(plate, plate)?.residualMm // 0
 */
export function registerToes(earlier: RingMm, later: RingMm): ToeMove | null {
  const from = resampleLine(earlier, PLATE_SPACING_MM, true);
  const onto = resampleLine(later, PLATE_SPACING_MM, true);
  if (from.length === 0 || onto.length === 0) return null;
  const about = meanOf(from);
  let move: ToeMove = { about, to: meanOf(onto), turnRad: 0, residualMm: Infinity };
  for (let round = 0; round < REGISTRATION_ROUNDS; round++) {
    const matches = from.map((point) => matchOn(onto, movePoint(move, point))).sort((a, b) => Math.abs(a.offMm) - Math.abs(b.offMm));
    const kept = matches.slice(0, Math.ceil(REGISTRATION_KEPT_SHARE * matches.length));
    const residualMm = Math.sqrt(kept.reduce((sum, { offMm }) => sum + offMm ** 2, 0) / kept.length);
    const step = solveStep(kept, move.to);
    if (step === null) return null;
    const to = { acrossMm: move.to.acrossMm + step.acrossMm, downMm: move.to.downMm + step.downMm };
    move = { about, to, turnRad: move.turnRad + step.turnRad, residualMm };
    if (Math.hypot(step.acrossMm, step.downMm) + Math.abs(step.turnRad) < SETTLED) break;
  }
  return move;
}

/** Shift in mm and turn in rad that no longer matter. */
const SETTLED = 1e-5;

/** A moved point, the other outline's normal where it is nearest, and how far the point lies beside the outline there. */
interface Match {
  readonly at: PointMm;
  readonly normal: PointMm;
  readonly offMm: number;
}

function matchOn(outline: RingMm, at: PointMm): Match {
  let nearest = 0;
  let squared = Infinity;
  outline.forEach((point, i) => {
    const one = (point.acrossMm - at.acrossMm) ** 2 + (point.downMm - at.downMm) ** 2;
    if (one < squared) [nearest, squared] = [i, one];
  });
  const n = outline.length;
  const [before, after] = [outline[(nearest - 1 + n) % n], outline[(nearest + 1) % n]];
  const length = Math.hypot(after.acrossMm - before.acrossMm, after.downMm - before.downMm) || 1;
  const normal = { acrossMm: -(after.downMm - before.downMm) / length, downMm: (after.acrossMm - before.acrossMm) / length };
  const point = outline[nearest];
  return { at, normal, offMm: (at.acrossMm - point.acrossMm) * normal.acrossMm + (at.downMm - point.downMm) * normal.downMm };
}

/** Small shift and turn that bring the points onto the outline's tangents, by least squares; null where nothing holds them. */
function solveStep(matches: readonly Match[], centre: PointMm): { acrossMm: number; downMm: number; turnRad: number } | null {
  const normals = [[0, 0, 0], [0, 0, 0], [0, 0, 0]];
  const right = [0, 0, 0];
  for (const { at, normal, offMm } of matches) {
    const lever = normal.downMm * (at.acrossMm - centre.acrossMm) - normal.acrossMm * (at.downMm - centre.downMm);
    const row = [normal.acrossMm, normal.downMm, lever];
    row.forEach((a, i) => {
      right[i] -= a * offMm;
      row.forEach((b, j) => (normals[i][j] += a * b));
    });
  }
  const step = solveLinear(normals, right);
  return step && { acrossMm: step[0], downMm: step[1], turnRad: step[2] };
}

function meanOf(points: LineMm): PointMm {
  const sum = points.reduce((s, p) => ({ acrossMm: s.acrossMm + p.acrossMm, downMm: s.downMm + p.downMm }));
  return { acrossMm: sum.acrossMm / points.length, downMm: sum.downMm / points.length };
}
