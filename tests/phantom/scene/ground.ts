/** What the foot stands on: linear sRGB in daylight at a place of the floor, in millimetres. */
import { layeredNoise, valueNoise } from '../random/value-noise';
import type { Ground } from '../phantom-spec';

export type GroundColour = (out: Float64Array, acrossMm: number, downMm: number) => void;

function wood(seed: number, tone: number): GroundColour {
  const grain = layeredNoise(seed, 2);
  const rings = valueNoise(seed + 1);
  return (out, x, y) => {
    const plank = Math.floor(x / 95);
    const line = grain(x * 0.9 + plank * 13, y * 0.035);
    const ring = Math.sin(6 * rings(x * 0.05 + plank * 7, y * 0.008) + x * 0.35);
    const seam = Math.abs(x - 95 * Math.round(x / 95)) < 0.5 ? 0.45 : 1;
    const light = tone * seam * (1 + 0.16 * line + 0.1 * ring);
    out[0] = 0.42 * light;
    out[1] = 0.25 * light;
    out[2] = 0.125 * light;
  };
}

function tiles(seed: number, tone: number): GroundColour {
  const cloud = layeredNoise(seed, 2);
  return (out, x, y) => {
    const u = Math.abs(x - 100 * Math.round(x / 100)), v = Math.abs(y + 30 - 100 * Math.round((y + 30) / 100));
    const light = tone * (Math.min(u, v) < 1.3 ? 0.55 : 1 + 0.09 * cloud(x * 0.06, y * 0.06));
    out[0] = 0.48 * light;
    out[1] = 0.46 * light;
    out[2] = 0.42 * light;
  };
}

function cloth(seed: number, tone: number, rough: number): GroundColour {
  const fold = layeredNoise(seed, 2);
  const hue = valueNoise(seed)(3.5, 1.5);
  const pile = layeredNoise(seed + 2, 2);
  return (out, x, y) => {
    const weave = rough > 0.5 ? pile(x * 0.9, y * 0.9) : 0.5 * Math.sin(x * 7) * Math.sin(y * 7);
    const light = tone * (1 + 0.14 * fold(x * 0.018, y * 0.018) + (0.1 + 0.25 * rough) * 0.5 * weave);
    out[0] = (0.4 + 0.14 * hue) * light;
    out[1] = 0.43 * light;
    out[2] = (0.46 - 0.16 * hue) * light;
  };
}

function paper(seed: number, tone: number): GroundColour {
  const cloud = layeredNoise(seed, 3);
  return (out, x, y) => {
    const light = tone * 0.72 * (1 + 0.02 * cloud(x * 0.4, y * 0.4));
    out[0] = light;
    out[1] = light;
    out[2] = light * 0.985;
  };
}

/** The colour of one kind of ground; `tone` 0.3 dark … 1.3 bright. */
export function groundColour(ground: Ground, seed: number, tone: number): GroundColour {
  if (ground === 'wood') return wood(seed, tone);
  if (ground === 'tiles') return tiles(seed, tone);
  if (ground === 'paper') return paper(seed, tone);
  return cloth(seed, tone, ground === 'towel' ? 1 : 0);
}
