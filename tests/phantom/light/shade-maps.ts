/** Shadows and openness, worked out once on coarse tables instead of for every pixel. */
import type { Lamp } from './lamp';
import type { CardOutline } from '../scene/card-outline';
import type { Foot } from '../scene/foot';
import { limit, smoothStep } from '../scene/smooth';
import type { ToePose } from '../scene/toe-pose';
import type { ToeSurface } from '../scene/toe-surface';
import type { ToeTracer } from '../scene/trace-toe';

/** Two numbers per place: how much of the lamp is seen, and how much of the surroundings. */
export interface ShadeMap {
  lampAt(u: number, v: number): number;
  openAt(u: number, v: number): number;
}

interface Frame {
  readonly lowU: number;
  readonly lowV: number;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}

function shadeMap(frame: Frame, fill: (u: number, v: number) => readonly [number, number]): ShadeMap {
  const { lowU, lowV, step, columns, rows } = frame;
  const lamp = new Float32Array(rows * columns);
  const open = new Float32Array(rows * columns);
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) [lamp[r * columns + c], open[r * columns + c]] = fill(lowU + c * step, lowV + r * step);
  }
  const read = (table: Float32Array, u: number, v: number): number => {
    const c = limit((u - lowU) / step, 0, columns - 1.001);
    const r = limit((v - lowV) / step, 0, rows - 1.001);
    const c0 = c | 0, r0 = r | 0, fc = c - c0, fr = r - r0;
    const i = r0 * columns + c0;
    const top = table[i] + (table[i + 1] - table[i]) * fc;
    const bottom = table[i + columns] + (table[i + columns + 1] - table[i + columns]) * fc;
    return top + (bottom - top) * fr;
  };
  return { lampAt: (u, v) => read(lamp, u, v), openAt: (u, v) => read(open, u, v) };
}

export interface Blockers {
  readonly lamp: Lamp;
  readonly card: CardOutline | null;
  readonly toe: { readonly tracer: ToeTracer; readonly pose: ToePose } | null;
  readonly foot: Foot | null;
}

/** How much of the lamp a place sees past the card that floats above it. */
export function pastCard({ lamp, card }: Blockers, across: number, down: number, height: number): number {
  if (card === null || height > -0.02) return 1;
  const rise = -height / lamp.toward[2];
  const soft = Math.max(0.15, rise * lamp.spread);
  const inside = card.insideMm(across + rise * lamp.toward[0], down + rise * lamp.toward[1]);
  return 1 - smoothStep(-soft, soft, inside);
}

function pastFoot({ lamp, foot, toe }: Blockers, point: readonly [number, number, number]): number {
  if (foot === null || toe === null) return 1;
  const [ox, oy, oz] = toe.pose.toToe(point);
  const [dx, dy, dz] = toe.pose.turnToToe(lamp.toward);
  let seen = 1;
  for (let t = 1.5, step = 0; step < 20 && t < 120 && seen > 0; step++) {
    const gap = foot.free(ox + t * dx, oy + t * dy, oz + t * dz);
    seen = Math.min(seen, 0.5 + gap / (2 * lamp.spread * t + 0.5));
    t += Math.max(1.5, gap);
  }
  const s = limit(seen, 0, 1);
  return s * s * (3 - 2 * s);
}

function pastToe({ lamp, toe }: Blockers, point: readonly [number, number, number]): number {
  if (toe === null) return 1;
  const [ox, oy, oz] = toe.pose.toToe(point);
  const [dx, dy, dz] = toe.pose.turnToToe(lamp.toward);
  return toe.tracer.lampVisible(ox, oy, oz, dx, dy, dz, lamp.spread);
}

/** The ground's light, `heightMm` (negative) below the card. */
export function groundShade(blockers: Blockers, heightMm: number, around: readonly [number, number]): ShadeMap {
  const frame = { lowU: around[0] - 180, lowV: around[1] - 160, step: 3, columns: 121, rows: 108 };
  return shadeMap(frame, (u, v) => {
    const point = [u, v, heightMm] as const;
    const under = blockers.card === null ? 0 : smoothStep(heightMm * 0.9, -heightMm * 0.5, blockers.card.insideMm(u, v));
    const [x, y, z] = blockers.toe?.pose.toToe(point) ?? [0, 0, 0];
    const near = blockers.foot === null ? 9 : blockers.foot.free(x, y, z + 3);
    const open = (1 - 0.7 * under) * (0.35 + 0.65 * smoothStep(-2, 14, near));
    return [pastCard(blockers, u, v, heightMm) * pastFoot(blockers, point) * pastToe(blockers, point), open];
  });
}

/** The card's own light: the toe may throw a shadow on it. */
export function cardShade(blockers: Blockers, widthMm: number, heightMm: number): ShadeMap {
  const frame = { lowU: 0, lowV: 0, step: 1, columns: Math.ceil(widthMm) + 2, rows: Math.ceil(heightMm) + 2 };
  return shadeMap(frame, (u, v) => [pastToe(blockers, [u, v, 0.05]), 1]);
}

/** The toe's own light over rows and columns of its table: its folds shade one another. */
export function toeShade(blockers: Blockers, surface: ToeSurface, every: number): ShadeMap {
  const { rows, columns, radiusMm, alongMm, normals, axisAsideMm, turnStepRad } = surface;
  const frame = { lowU: 0, lowV: 0, step: every, columns: Math.ceil(columns / every), rows: Math.ceil(rows / every) };
  const toe = blockers.toe;
  if (toe === null) return shadeMap({ ...frame, columns: 2, rows: 2 }, () => [1, 1]);
  const [dx, dy, dz] = toe.pose.turnToToe(blockers.lamp.toward);
  return shadeMap(frame, (u, v) => {
    const r = Math.min(rows - 1, v);
    const c = Math.min(columns - 1, u);
    const i = r * columns + c;
    const turn = (c - (columns - 1) / 2) * turnStepRad;
    const n = [normals[i * 3], normals[i * 3 + 1], normals[i * 3 + 2]];
    const x = axisAsideMm[r] + radiusMm[i] * Math.sin(turn);
    const z = radiusMm[i] * Math.cos(turn);
    const open = toe.tracer.openness(x, alongMm[r], z, n[0], n[1], n[2]);
    const facing = n[0] * dx + n[1] * dy + n[2] * dz;
    const lamp = facing < -0.1 ? 0 : toe.tracer.lampVisible(x + 0.12 * n[0], alongMm[r] + 0.12 * n[1], z + 0.12 * n[2], dx, dy, dz, blockers.lamp.spread);
    return [lamp, open];
  });
}
