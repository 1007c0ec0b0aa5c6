/** How the toe's frame (aside, along, up) lies in the card's frame (across, down, height toward the camera). */
import type { PointMm } from '../../../lib/units';
import type { PoseSpec } from '../phantom-spec';
import { skinToToe, type ToeSurface } from './toe-surface';

export type Vector = readonly [number, number, number];

export interface ToePose {
  readonly origin: Vector;
  /** Columns: the toe's three axes in the card's frame. */
  readonly axes: readonly [Vector, Vector, Vector];
  toCard(point: Vector): [number, number, number];
  toToe(point: Vector): [number, number, number];
  /** A direction of the card's frame in the toe's. */
  turnToToe(direction: Vector): [number, number, number];
}

const rad = (deg: number): number => (deg * Math.PI) / 180;

function poseAt(origin: Vector, { yawDeg, pitchDeg, rollDeg }: PoseSpec): ToePose {
  const [cy, sy] = [Math.cos(rad(yawDeg)), Math.sin(rad(yawDeg))];
  const [cp, sp] = [Math.cos(rad(pitchDeg)), Math.sin(rad(pitchDeg))];
  const [cr, sr] = [Math.cos(rad(rollDeg)), Math.sin(rad(rollDeg))];
  // Roll about the toe's axis, then pitch (ankle up), then turn in the card's plane.
  const turn = ([x, y, z]: Vector): Vector => {
    const [x1, z1] = [cr * x + sr * z, -sr * x + cr * z];
    const [y2, z2] = [cp * y - sp * z1, sp * y + cp * z1];
    return [cy * x1 - sy * y2, sy * x1 + cy * y2, z2];
  };
  const axes = [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])] as const;
  const turnToToe = (d: Vector): [number, number, number] =>
    axes.map((axis) => axis[0] * d[0] + axis[1] * d[1] + axis[2] * d[2]) as [number, number, number];
  return {
    origin,
    axes,
    turnToToe,
    toCard: ([x, y, z]) => [0, 1, 2].map((k) => origin[k] + axes[0][k] * x + axes[1][k] * y + axes[2][k] * z) as [number, number, number],
    toToe: (p) => turnToToe([p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]]),
  };
}

/** The deepest point of a notch, where the tip of the toe belongs. */
export function notchEnd(cut: readonly PointMm[]): { acrossMm: number; downMm: number } {
  const down = Math.min(...cut.map((point) => point.downMm));
  const acrosses = cut.map((point) => point.acrossMm);
  return { acrossMm: (Math.min(...acrosses) + Math.max(...acrosses)) / 2, downMm: down };
}

/** Lays the toe into the notch so that its lateral fold margins stand at the wanted height. */
export function toePose(surface: ToeSurface, pose: PoseSpec, cut: readonly PointMm[]): ToePose {
  const end = notchEnd(cut);
  const flat = poseAt([end.acrossMm + pose.sideShiftMm, end.downMm + pose.tipGapMm, 0], pose);
  const heights = ([-1, 1] as const).flatMap((side) =>
    Array.from({ length: 12 }, (_, i) => flat.toCard(skinToToe(surface, surface.nail.marginPoint(side, (surface.nail.cornerShare * i) / 11)))[2]),
  );
  const mean = heights.reduce((sum, height) => sum + height, 0) / heights.length;
  return poseAt([flat.origin[0], flat.origin[1], -mean - pose.heightOffsetMm], pose);
}
