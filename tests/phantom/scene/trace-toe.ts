/** A ray against the toe's table: steps of the distance that is surely free, then halving. */
import type { ToeSurface } from './toe-surface';
import { stretch, TURN_LIMIT_RAD } from './toe-surface';

/** Where a ray met the toe: fractional row and column of the table. */
export interface ToeHit {
  row: number;
  column: number;
}

export interface ToeTracer {
  /** Distance along the ray to the toe, or −1; fills `hit`. Frame: aside, along, up. `near`: the neighbour's distance. */
  trace(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, far: number, hit: ToeHit, near?: number): number;
  /** How much of a lamp of this angular size the toe leaves visible, 0…1. */
  lampVisible(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, spread: number): number;
  /** How open the surroundings are at a place of the skin with this normal, 0…1. */
  openness(x: number, y: number, z: number, nx: number, ny: number, nz: number): number;
}

/** How far before the neighbour's hit a ray begins: more than any fold is high. */
const HEAD_START_MM = 3;
const CLOSE_MM = 0.004;
const MOST_STEPS = 110;

/** Angle from straight up; a polynomial good to 1e-5 rad, four times quicker than the exact one. */
function turnFromUp(aside: number, up: number): number {
  const across = aside < 0 ? -aside : aside;
  const high = up < 0 ? -up : up;
  const q = across < high ? across / high : high / (across || 1e-9);
  const p = q * q;
  let turn = q * (0.99997726 + p * (-0.33262347 + p * (0.19354346 + p * (-0.11643287 + p * (0.05265332 - p * 0.0117212)))));
  if (across >= high) turn = Math.PI / 2 - turn;
  if (up < 0) turn = Math.PI - turn;
  return aside < 0 ? -turn : turn;
}

/** Builds a tracer over one surface. */
export function toeTracer(surface: ToeSurface): ToeTracer {
  const { rows, columns, rowStepMm, turnStepRad, radiusMm, axisAsideMm, steepness, highestMm } = surface;
  const middle = (columns - 1) / 2;
  const lastRow = rows - 1.001;
  const lastColumn = columns - 1.001;
  const longestMm = surface.alongMm[rows - 1];
  let rowAt = 0;
  let columnAt = 0;

  /** Signed free distance, positive outside; leaves the place in rowAt and columnAt. */
  function free(x: number, y: number, z: number): number {
    if (y <= 0.001) {
      const past = Math.max(0, Math.sqrt(x * x + z * z) - 2);
      return 0.9 * Math.sqrt(y * y + past * past) + 0.004;
    }
    rowAt = stretch(y) / rowStepMm;
    if (rowAt > lastRow) rowAt = lastRow;
    const r = rowAt | 0;
    const fr = rowAt - r;
    const aside = x - (axisAsideMm[r] + (axisAsideMm[r + 1] - axisAsideMm[r]) * fr);
    const turn = turnFromUp(aside, z);
    columnAt = turn < -TURN_LIMIT_RAD ? 0 : turn > TURN_LIMIT_RAD ? lastColumn : turn / turnStepRad + middle;
    const c = columnAt | 0;
    const fc = columnAt - c;
    const i = r * columns + c;
    const near = radiusMm[i] + (radiusMm[i + 1] - radiusMm[i]) * fc;
    const next = radiusMm[i + columns] + (radiusMm[i + columns + 1] - radiusMm[i + columns]) * fc;
    let radius = near + (next - near) * fr;
    // The tube sinks into the foot instead of ending.
    if (y > longestMm) radius -= 0.06 * (y - longestMm);
    return (Math.sqrt(aside * aside + z * z) - radius) * steepness[r];
  }

  return {
    trace(ox, oy, oz, dx, dy, dz, far, hit, near = -1) {
      const top = oz > highestMm + 0.3 && dz < 0 ? (highestMm + 0.3 - oz) / dz : 0;
      let t = near - HEAD_START_MM;
      if (t < top || free(ox + t * dx, oy + t * dy, oz + t * dz) < 0.2) t = top;
      let before = t;
      for (let step = 0; step < MOST_STEPS && t < far; step++) {
        const gap = free(ox + t * dx, oy + t * dy, oz + t * dz);
        if (gap < CLOSE_MM) {
          if (gap < 0) {
            let outside = before;
            let inside = t;
            for (let i = 0; i < 9; i++) {
              const half = (outside + inside) / 2;
              if (free(ox + half * dx, oy + half * dy, oz + half * dz) > 0) outside = half;
              else inside = half;
            }
            t = (outside + inside) / 2;
            free(ox + t * dx, oy + t * dy, oz + t * dz);
          }
          hit.row = rowAt;
          hit.column = columnAt;
          return t;
        }
        before = t;
        t += gap < 0.015 ? 0.015 : gap;
        if (oz + t * dz < -40) return -1;
      }
      return -1;
    },
    lampVisible(ox, oy, oz, dx, dy, dz, spread) {
      let seen = 1;
      let t = 0.25;
      for (let step = 0; step < 28; step++) {
        const gap = free(ox + t * dx, oy + t * dy, oz + t * dz);
        seen = Math.min(seen, 0.5 + gap / (2 * spread * t));
        if (seen <= 0) return 0;
        t += Math.max(0.15 + 0.1 * t, gap);
        if (oz + t * dz > highestMm + 1) break;
      }
      return seen * seen * (3 - 2 * seen);
    },
    openness(x, y, z, nx, ny, nz) {
      let closed = 0;
      for (let i = 0, height = 0.35; i < 4; i++, height *= 1.9) {
        const gap = free(x + height * nx, y + height * ny, z + height * nz);
        closed += Math.max(0, 1 - gap / (height * 0.85)) * 0.34;
      }
      return Math.max(0.15, 1 - closed);
    },
  };
}
