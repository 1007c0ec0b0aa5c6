/** The light that comes from one place of the toe toward the camera. */
import { pastCard } from '../light/shade-maps';
import { shineOf } from '../light/lamp';
import type { Scene } from './build-scene';
import type { Vector } from './toe-pose';
import type { ToeHit } from './trace-toe';

export type ShadeToe = (out: Float64Array, hit: ToeHit, point: Vector, view: Vector) => void;

/** Skin lets some light round the corner; this is how far beyond the terminator it still glows. */
const WRAP = 0.14;

/** Four neighbours of a table and their weights: where a ray met the skin between the texels. */
class Between {
  private i = 0;
  private j = 0;
  private w00 = 0;
  private w01 = 0;
  private w10 = 0;
  private w11 = 0;

  constructor(private readonly rows: number, private readonly columns: number) {}

  at(hit: ToeHit): number {
    const r = Math.min(this.rows - 2, hit.row | 0), c = Math.min(this.columns - 2, hit.column | 0);
    const fr = hit.row - r, fc = hit.column - c;
    this.i = r * this.columns + c;
    this.j = this.i + this.columns;
    this.w00 = (1 - fr) * (1 - fc);
    this.w01 = (1 - fr) * fc;
    this.w10 = fr * (1 - fc);
    this.w11 = fr * fc;
    return this.i;
  }

  read(table: Float32Array, width: number, k: number): number {
    const a = this.i * width + k, b = this.j * width + k;
    return table[a] * this.w00 + table[a + width] * this.w01 + table[b] * this.w10 + table[b + width] * this.w11;
  }
}

/** Prepares the shading of a scene's toe. */
export function shadeToe(scene: Scene): ShadeToe {
  const { lamp, card, spec } = scene;
  const toe = scene.toe!;
  const { surface, pose, keyPaint, ambientPaint, shade } = toe;
  const { normals } = surface;
  const between = new Between(surface.rows, surface.columns);
  const n: [number, number, number] = [0, 0, 1];
  const [ax, ay, az] = pose.axes;
  const blockers = { lamp, card: card?.outline ?? null, toe: null, foot: null };
  const glare = spec.faults.includes('glareNail');
  const nail = spec.toe.nail;
  return (out, hit, point, view) => {
    const i = between.at(hit);
    const lx = between.read(normals, 3, 0), ly = between.read(normals, 3, 1), lz = between.read(normals, 3, 2);
    const length = Math.sqrt(lx * lx + ly * ly + lz * lz) || 1;
    for (let k = 0; k < 3; k++) n[k] = (ax[k] * lx + ay[k] * ly + az[k] * lz) / length;
    const facing = n[0] * lamp.toward[0] + n[1] * lamp.toward[1] + n[2] * lamp.toward[2];
    const seen = shade.lampAt(hit.column, hit.row) * pastCard(blockers, point[0], point[1], point[2]) * lamp.evenness(point[0], point[1]);
    const direct = lamp.strength * seen * (Math.max(0, facing + WRAP) / (1 + WRAP));
    const open = shade.openAt(hit.column, hit.row);
    const around = lamp.ambient * open * (0.62 + 0.38 * n[2]);
    const shine = between.read(keyPaint.shine, 1, 0);
    let gleam = shine > 0.02 ? shine * shineOf(lamp, n, view, between.read(keyPaint.sharpness, 1, 0)) * (0.25 + 0.75 * seen) : 0;
    if (glare) {
      const along = surface.alongMm[Math.floor(hit.row)] - nail.freeEdgeMm - nail.lengthMm * 0.5;
      const across = surface.acrossMm[i];
      gleam += 3 * Math.exp(-((along / (nail.lengthMm * 0.36)) ** 4) - (across / (nail.halfWidthMm * 0.75)) ** 4);
    }
    for (let k = 0; k < 3; k++) out[k] = between.read(keyPaint.albedo, 3, k) * direct + between.read(ambientPaint.albedo, 3, k) * around + gleam;
  };
}
