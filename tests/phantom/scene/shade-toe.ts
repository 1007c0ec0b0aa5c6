/** The light that comes from one place of the toe toward the camera. */
import { pastCard } from '../light/shade-maps';
import { shineOf } from '../light/lamp';
import type { Scene } from './build-scene';
import type { Vector } from './toe-pose';
import type { ToeHit } from './trace-toe';

export type ShadeToe = (out: Float64Array, hit: ToeHit, point: Vector, view: Vector) => void;

/** Skin lets some light round the corner; this is how far beyond the terminator it still glows. */
const WRAP = 0.14;

/** Prepares the shading of a scene's toe. */
export function shadeToe(scene: Scene): ShadeToe {
  const { lamp, card, spec } = scene;
  const toe = scene.toe!;
  const { surface, pose, keyPaint, ambientPaint, shade } = toe;
  const { columns, normals } = surface;
  const [ax, ay, az] = pose.axes;
  const blockers = { lamp, card: card?.outline ?? null, toe: null, foot: null };
  const glare = spec.faults.includes('glareNail');
  const nail = spec.toe.nail;
  return (out, hit, point, view) => {
    const r0 = Math.min(surface.rows - 2, hit.row | 0), c0 = Math.min(columns - 2, hit.column | 0);
    const fr = hit.row - r0, fc = hit.column - c0;
    const i = r0 * columns + c0;
    const w00 = (1 - fr) * (1 - fc), w01 = (1 - fr) * fc, w10 = fr * (1 - fc), w11 = fr * fc;
    const read = (table: Float32Array, width: number, k: number): number =>
      table[i * width + k] * w00 + table[(i + 1) * width + k] * w01 + table[(i + columns) * width + k] * w10 + table[(i + columns + 1) * width + k] * w11;
    const lx = read(normals, 3, 0), ly = read(normals, 3, 1), lz = read(normals, 3, 2);
    const length = Math.hypot(lx, ly, lz) || 1;
    const n: Vector = [
      (ax[0] * lx + ay[0] * ly + az[0] * lz) / length,
      (ax[1] * lx + ay[1] * ly + az[1] * lz) / length,
      (ax[2] * lx + ay[2] * ly + az[2] * lz) / length,
    ];
    const facing = n[0] * lamp.toward[0] + n[1] * lamp.toward[1] + n[2] * lamp.toward[2];
    const seen = shade.lampAt(hit.column, hit.row) * pastCard(blockers, point[0], point[1], point[2]) * lamp.evenness(point[0], point[1]);
    const direct = lamp.strength * seen * (Math.max(0, facing + WRAP) / (1 + WRAP));
    const open = shade.openAt(hit.column, hit.row);
    const around = lamp.ambient * open * (0.62 + 0.38 * n[2]);
    const shine = read(keyPaint.shine, 1, 0);
    let gleam = shine > 0.02 ? shine * shineOf(lamp, n, view, read(keyPaint.sharpness, 1, 0)) * (0.25 + 0.75 * seen) : 0;
    if (glare) {
      const along = surface.alongMm[r0] - nail.freeEdgeMm - nail.lengthMm * 0.5;
      const across = surface.acrossMm[i];
      gleam += 3 * Math.exp(-((along / (nail.lengthMm * 0.36)) ** 4) - (across / (nail.halfWidthMm * 0.75)) ** 4);
    }
    for (let k = 0; k < 3; k++) out[k] = read(keyPaint.albedo, 3, k) * direct + read(ambientPaint.albedo, 3, k) * around + gleam;
  };
}
