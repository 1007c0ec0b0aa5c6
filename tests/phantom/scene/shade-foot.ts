/** The light from the rest of the foot, which is only there to look like a foot. */
import { layeredNoise, valueNoise } from '../random/value-noise';
import { melaninForIta, RESTING_BLOOD_SHARE, RESTING_SATURATION } from '../skin/skin-class';
import type { Scene } from './build-scene';
import { pastCard } from '../light/shade-maps';
import { mix } from './smooth';
import type { Vector } from './toe-pose';

/** Shades a place given in the card's frame and in the toe's. */
export type ShadeFoot = (out: Float64Array, point: Vector, own: Vector) => void;

/** Prepares the shading of a scene's foot. */
export function shadeFoot(scene: Scene): ShadeFoot {
  const { spec, lamp } = scene;
  const { foot, pose } = scene.toe!;
  const melanin = melaninForIta(spec.toe.skin.itaDeg);
  const skin = new Float32Array(12);
  for (const [at, response] of [[0, scene.keyResponse], [6, scene.ambientResponse]] as const) {
    response.skinInto(skin, at, melanin, RESTING_BLOOD_SHARE * 0.9, RESTING_SATURATION);
    response.skinInto(skin, at + 3, melanin * 1.5, RESTING_BLOOD_SHARE * 2.6, RESTING_SATURATION);
  }
  const nail = scene.keyResponse.paint([0.66, 0.52, 0.44]);
  const patch = layeredNoise(spec.toe.seed + 91, 2);
  const pores = valueNoise(spec.toe.seed + 92);
  const blockers = { lamp, card: scene.card?.outline ?? null, toe: null, foot: null };
  const [lx, ly, lz] = pose.turnToToe(lamp.toward);
  const up = pose.turnToToe([0, 0, 1]);
  return (out, point, own) => {
    const x = own[0], y = own[1], z = own[2];
    const h = 1.6;
    const here = foot.free(x, y, z);
    const nx = foot.free(x + h, y, z) - here;
    const ny = foot.free(x, y + h, z) - here;
    const nz = foot.free(x, y, z + h) - here;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
    const facing = (nx * lx + ny * ly + nz * lz) / length;
    const upward = (nx * up[0] + ny * up[1] + nz * up[2]) / length;
    const open = Math.min(1, 0.4 + 0.6 * Math.max(0, foot.free(x + (4 * nx) / length, y + (4 * ny) / length, z + (4 * nz) / length)) / 4);
    const seen = pastCard(blockers, point[0], point[1], point[2]) * lamp.evenness(point[0], point[1]);
    const direct = lamp.strength * seen * (Math.max(0, facing + 0.15) / 1.15);
    const around = lamp.ambient * open * (0.62 + 0.38 * upward);
    const flush = Math.min(1, Math.max(0, 0.25 + 0.3 * patch(x * 0.09, y * 0.09)));
    const grain = 1 + 0.05 * pores(x * 1.1, y * 1.1);
    const plate = upward > 0.45 && y < 45 && foot.onNail(x, y) ? 0.7 : 0;
    for (let k = 0; k < 3; k++) {
      const key = mix(mix(skin[k], skin[3 + k], flush), nail[k], plate);
      const ambient = mix(mix(skin[6 + k], skin[9 + k], flush), nail[k], plate);
      out[k] = grain * (key * direct + ambient * around);
    }
  };
}
