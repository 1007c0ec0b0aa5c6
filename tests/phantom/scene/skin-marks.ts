/** Small things on the skin: dried blood and crusts near the wound, freckles, hair behind the nail. */
import { randomSource, type RandomSource } from '../random/random-source';
import { valueNoise } from '../random/value-noise';
import type { PhantomSpec } from '../phantom-spec';
import { smoothStep } from './smooth';
import { stretch, type ToeSurface } from './toe-surface';

type Spots = (alongMm: number, acrossMm: number) => number;

export interface SkinMarks {
  readonly driedBlood: Spots;
  readonly crust: Spots;
  readonly freckle: Spots;
  /** 0…1 per texel of the surface, or null without hair. */
  readonly hair: Float32Array | null;
}

interface Spot {
  readonly alongMm: number;
  readonly acrossMm: number;
  readonly longMm: number;
  readonly wideMm: number;
}

function spotField(spots: readonly Spot[], seed: number, softness: number): Spots {
  const rough = valueNoise(seed);
  return (alongMm, acrossMm) => {
    let most = 0;
    for (const spot of spots) {
      const u = (alongMm - spot.alongMm) / spot.longMm;
      const v = (acrossMm - spot.acrossMm) / spot.wideMm;
      const far = u * u + v * v;
      if (far > 4) continue;
      const edge = Math.sqrt(far) + 0.3 * rough(alongMm * 1.9, acrossMm * 1.9);
      most = Math.max(most, 1 - smoothStep(1 - softness, 1 + softness, edge));
    }
    return most;
  };
}

function spotsAtFold(random: RandomSource, surface: ToeSurface, count: number, sizeMm: readonly [number, number]): Spot[] {
  const { nail } = surface;
  return Array.from({ length: count }, () => {
    const point = nail.marginPoint(nail.treated, random.between(0.05, 0.75));
    return {
      alongMm: point.alongMm + random.between(-0.4, 0.4),
      acrossMm: point.acrossMm - nail.treated * random.between(-1, 1.8),
      longMm: random.between(...sizeMm) * random.between(1, 1.8),
      wideMm: random.between(...sizeMm),
    };
  });
}

function freckles(random: RandomSource, count: number): Spot[] {
  return Array.from({ length: count }, () => {
    const size = random.between(0.25, 0.8);
    return { alongMm: random.between(4, 48), acrossMm: random.between(-14, 14), longMm: size, wideMm: size };
  });
}

/** Draws hairs as thin bent strokes on the table, thicker at the root. */
function hairs(random: RandomSource, surface: ToeSurface, count: number): Float32Array {
  const drawn = new Float32Array(surface.rows * surface.columns);
  const middle = (surface.columns - 1) / 2;
  for (let h = 0; h < count; h++) {
    const alongMm = random.between(24, 42);
    let turn = random.normal() * 0.35;
    let row = stretch(alongMm) / surface.rowStepMm;
    let lean = random.between(-0.6, 0.6);
    const lengthMm = random.between(2.5, 6.5);
    const steps = Math.ceil(lengthMm / 0.04);
    for (let s = 0; s < steps; s++) {
      lean += random.normal() * 0.01;
      row -= (0.04 * Math.cos(lean)) / surface.rowStepMm;
      turn += (0.04 * Math.sin(lean)) / surface.body.halfWidthMm(alongMm);
      const column = turn / surface.turnStepRad + middle;
      const r = Math.floor(row);
      const c = Math.floor(column);
      if (r < 1 || r >= surface.rows - 1 || c < 1 || c >= surface.columns - 2) break;
      const ink = 0.75 * (1 - (0.6 * s) / steps);
      const i = r * surface.columns + c;
      const right = column - c;
      drawn[i] = Math.max(drawn[i], ink * (1 - right));
      drawn[i + 1] = Math.max(drawn[i + 1], ink * right);
    }
  }
  return drawn;
}

/** The marks of one toe on one day. */
export function skinMarks({ toe, wound }: Pick<PhantomSpec, 'toe' | 'wound'>, surface: ToeSurface): SkinMarks {
  const random = randomSource(toe.seed, 'marks');
  return {
    freckle: spotField(freckles(random, toe.skin.freckleCount), toe.seed + 61, 0.5),
    hair: toe.skin.hairCount > 0 ? hairs(random, surface, toe.skin.hairCount) : null,
    driedBlood: spotField(spotsAtFold(random, surface, wound.driedBloodCount, [0.3, 0.75]), toe.seed + 62, 0.2),
    crust: spotField(spotsAtFold(random, surface, wound.crustCount, [0.6, 1.3]), toe.seed + 63, 0.15),
  };
}
