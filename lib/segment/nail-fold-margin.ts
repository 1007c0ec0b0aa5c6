import type { LineMm, PointMm, RingMm } from '../units';
import { MARGIN_STEP_MM } from './constants';
import { highestNearby } from './highest-nearby';
import { marginArc } from './margin-arc';
import type { TissueFields, ToldSide, TreatedSide } from './segmentation';
import { treatedSide } from './treated-side';

/** The margin of the treated side, from the fold's distal end to the middle of the proximal fold. */
export interface TracedMargin {
  readonly line: LineMm;
  /** The part along the side of the nail. */
  readonly lateral: LineMm;
  readonly side: TreatedSide;
  /** Mean of the margin's own field along the line, 0…1. */
  readonly support: number;
}

/**
 * Finds the treated nail-fold margin: the stretch of the nail unit's outline (plate and groove together) along which
 * the margin's own field speaks.
 *
 * @param fields tissue fields
 * @param nailUnit outer outline of the nail unit
 * @param told the treated side where it is on record; a picture that speaks clearly against it is believed
 * @returns the line, or null when no stretch of at least 6 mm is supported, or it cannot be told which side was treated
 * @example traceNailFoldMargin(fields, ring)?.side // 'left'
 */
export function traceNailFoldMargin(fields: TissueFields, nailUnit: RingMm, told: ToldSide | null = null): TracedMargin | null {
  const ring = resampleRing(nailUnit, MARGIN_STEP_MM);
  const heard = ring.map((point) => highestNearby(fields.grid, fields.foldMargin, point));
  const middleMm = (Math.min(...ring.map((p) => p.acrossMm)) + Math.max(...ring.map((p) => p.acrossMm))) / 2;
  const side = treatedSide(fields, ring, heard, middleMm, told);
  if (side === null) return null;
  // The margin ends in the middle of the proximal fold, however far the field murmurs on along the other side.
  const arc = marginArc(fields, ring, heard, ({ acrossMm }) => (side === 'left') === acrossMm < middleMm);
  if (!arc) return null;
  const support = arc.reduce((sum, i) => sum + heard[i], 0) / arc.length;
  const line = withoutHook(startAtTip(arc.map((i) => ring[i])));
  return { line, lateral: lateralPart(line), side, support };
}

/** The toe points up the map: the end that lies higher is the distal one. */
function startAtTip(points: PointMm[]): PointMm[] {
  return points[0].downMm <= points[points.length - 1].downMm ? points : points.reverse();
}

/**
 * The nail unit's outline turns round the tip at the fold's distal end; the margin does not. Leading points that run
 * across the side are left out.
 */
function withoutHook(points: readonly PointMm[]): PointMm[] {
  const at = (share: number) => Math.round(share * (points.length - 1));
  const straight = directionDeg(points[at(SIDE_FROM)], points[at(SIDE_TO)]);
  const half = Math.round(TURN_WINDOW_MM / 2 / MARGIN_STEP_MM);
  const start = points.findIndex((point, i) => angleBetweenDeg(directionDeg(point, points[Math.min(points.length - 1, i + 2 * half)]), straight) < HOOK_TURN_DEG);
  return points.slice(Math.min(Math.max(0, start), at(SIDE_TO)));
}

/**
 * From the distal end to where the corner begins: where the line first turns away from its own straight run. Margin
 * and proximal half fold are about equally long, so the first part of the line is side for certain.
 *
 * @param line the margin from its distal end, points about 0.2 mm apart
 * @returns the part along the side of the nail
 * @example lateralPart(margin.line).length
 */
export function lateralPart(line: LineMm): LineMm {
  const half = Math.round(TURN_WINDOW_MM / MARGIN_STEP_MM);
  const at = (share: number) => Math.round(share * (line.length - 1));
  const straight = directionDeg(line[at(SIDE_FROM)], line[at(SIDE_TO)]);
  const turn = line.findIndex((_, i) => {
    if (i < at(SIDE_TO) || i + half >= line.length) return false;
    return angleBetweenDeg(directionDeg(line[i - half], line[i + half]), straight) > CORNER_TURN_DEG;
  });
  return line.slice(0, turn < 0 ? line.length : turn);
}

const SIDE_FROM = 0.1;
const SIDE_TO = 0.4;
const TURN_WINDOW_MM = 1;
const CORNER_TURN_DEG = 22;
const HOOK_TURN_DEG = 40;

function directionDeg(from: PointMm, to: PointMm): number {
  return (Math.atan2(to.downMm - from.downMm, to.acrossMm - from.acrossMm) * 180) / Math.PI;
}

function angleBetweenDeg(a: number, b: number): number {
  const off = Math.abs(a - b) % 360;
  return Math.min(off, 360 - off);
}

/** Equally spaced points along a ring. */
function resampleRing(ring: RingMm, stepMm: number): PointMm[] {
  const points: PointMm[] = [];
  let left = 0;
  ring.forEach((from, i) => {
    const to = ring[(i + 1) % ring.length];
    const lengthMm = Math.hypot(to.acrossMm - from.acrossMm, to.downMm - from.downMm);
    for (; left < lengthMm; left += stepMm) {
      const share = left / lengthMm;
      points.push({ acrossMm: from.acrossMm + share * (to.acrossMm - from.acrossMm), downMm: from.downMm + share * (to.downMm - from.downMm) });
    }
    left -= lengthMm;
  });
  return points;
}

