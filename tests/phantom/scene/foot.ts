/** The rest of the foot: smaller toes and the back of the foot as swollen capsules, kept as a coarse table of distances. */
import type { PhantomSpec } from '../phantom-spec';
import { limit } from './smooth';

/** Frame of the big toe: aside, along, up. */
export interface Foot {
  /** Free distance in mm, positive outside. */
  free(aside: number, along: number, up: number): number;
  /** Is this place on the nail of a small toe? */
  onNail(aside: number, along: number): boolean;
}

interface Capsule {
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
  readonly fromRadius: number;
  readonly toRadius: number;
}

const STEP_MM = 3;
const LOW = { aside: -49, along: -20, up: -31 };
/** Beyond the far end the last section goes on and on, as a leg. */
const HIGH = { aside: 110, along: 235, up: 50 };
const MELT_MM = 7;

function capsules(spec: PhantomSpec): { small: Capsule[]; back: Capsule[] } {
  const half = spec.toe.halfWidthMm;
  const small = [0, 1, 2, 3].map((i): Capsule => {
    const radius = [6.6, 6.1, 5.7, 5.9][i] * (half / 11);
    const aside = half + 2 + 6.5 + i * 12.6;
    const start = [1, 7, 15, 25][i];
    return { from: [aside, start + radius, radius - half * 0.95 + 1], to: [aside * 0.94, 62, 0], fromRadius: radius, toRadius: radius * 1.1 };
  });
  const back: Capsule[] = [
    { from: [0, 47, -2.2], to: [2, 78, -1.5], fromRadius: half * 0.84, toRadius: half * 1.12 },
    { from: [2, 78, -1.5], to: [16, 330, 26], fromRadius: half * 1.12, toRadius: 34 },
    { from: [half + 8, 66, -3.5], to: [26, 330, 26], fromRadius: 9.5, toRadius: 36 },
    { from: [half + 21, 70, -4.5], to: [34, 330, 22], fromRadius: 9, toRadius: 34 },
    { from: [half + 34, 75, -5.5], to: [42, 330, 14], fromRadius: 8.5, toRadius: 30 },
    { from: [half + 46, 80, -6], to: [46, 330, 6], fromRadius: 8, toRadius: 26 },
  ];
  return { small, back };
}

function distance({ from, to, fromRadius, toRadius }: Capsule, x: number, y: number, z: number): number {
  const ex = to[0] - from[0], ey = to[1] - from[1], ez = to[2] - from[2];
  const px = x - from[0], py = y - from[1], pz = z - from[2];
  const share = limit((px * ex + py * ey + pz * ez) / (ex * ex + ey * ey + ez * ez), 0, 1);
  const dx = px - share * ex, dy = py - share * ey, dz = pz - share * ez;
  return Math.sqrt(dx * dx + dy * dy + dz * dz) - fromRadius - (toRadius - fromRadius) * share;
}

function melt(a: number, b: number, width: number): number {
  const overlap = Math.max(0, width - Math.abs(a - b)) / width;
  return Math.min(a, b) - (overlap * overlap * width) / 4;
}

/** The foot that belongs to a toe. */
export function footOf(spec: PhantomSpec): Foot {
  const { small, back } = capsules(spec);
  const mirror = spec.toe.foot === 'right' ? 1 : -1;
  const size = { x: Math.round((HIGH.aside - LOW.aside) / STEP_MM) + 1, y: Math.round((HIGH.along - LOW.along) / STEP_MM) + 1, z: Math.round((HIGH.up - LOW.up) / STEP_MM) + 1 };
  const table = new Float32Array(size.x * size.y * size.z);
  for (let z = 0, i = 0; z < size.z; z++) {
    for (let y = 0; y < size.y; y++) {
      for (let x = 0; x < size.x; x++, i++) {
        const at = [LOW.aside + x * STEP_MM, LOW.along + y * STEP_MM, LOW.up + z * STEP_MM] as const;
        const toes = small.reduce((least, one) => melt(least, distance(one, ...at), 1.2), 1e3);
        table[i] = back.reduce((least, one) => melt(least, distance(one, ...at), MELT_MM), toes);
      }
    }
  }
  const plane = size.x * size.y;
  return {
    free(aside, along, up) {
      const x = limit((aside * mirror - LOW.aside) / STEP_MM, 0, size.x - 1.001);
      const y = limit((along - LOW.along) / STEP_MM, 0, size.y - 1.001);
      const z = limit((up - LOW.up) / STEP_MM, 0, size.z - 1.001);
      const x0 = x | 0, y0 = y | 0, z0 = z | 0;
      const fx = x - x0, fy = y - y0, fz = z - z0;
      const i = z0 * plane + y0 * size.x + x0;
      const j = i + size.x;
      const near = table[i] + (table[i + 1] - table[i]) * fx;
      const next = table[j] + (table[j + 1] - table[j]) * fx;
      const nearUp = table[i + plane] + (table[i + plane + 1] - table[i + plane]) * fx;
      const nextUp = table[j + plane] + (table[j + plane + 1] - table[j + plane]) * fx;
      const low = near + (next - near) * fy;
      return low + (nearUp + (nextUp - nearUp) * fy - low) * fz;
    },
    onNail(aside, along) {
      return small.some(({ from, fromRadius }) => {
        const u = (aside * mirror - from[0]) / (fromRadius * 0.62);
        const v = (along - from[1] + fromRadius * 0.15) / (fromRadius * 0.7);
        return u ** 4 + v ** 4 < 1;
      });
    },
  };
}
