/** Photos that could be measured, with something on the toe or in the light that looks like redness, or like its edge. */
import { cleanSpec } from './fault-spec';
import type { PhantomSpec } from './phantom-spec';
import { type RandomSource, randomSource } from './random/random-source';
import type { Overrides } from './random-spec';
import type { SkinClass } from './skin/skin-class';

export const MISLEADINGS = ['iodine', 'polish', 'shadowEdge', 'driedBlood'] as const;
export type Misleading = (typeof MISLEADINGS)[number];

/** Linear sRGB of red, rose and dark varnish. */
const VARNISHES = [[0.45, 0.02, 0.04], [0.5, 0.12, 0.15], [0.08, 0.02, 0.1]] as const;
/** About where the nail lies on our card. */
const NAIL_MM = [42.8, 38] as const;

const ADD: Readonly<Record<Exclude<Misleading, 'polish'>, (random: RandomSource) => Overrides>> = {
  iodine: (random) => ({ wound: { iodine: random.between(0.5, 1) } }),
  shadowEdge: (random) => ({
    light: {
      // Lamp and sky of two colours: then a shadow has a colour of its own.
      key: random.pick(['daylight', 'warmLed'] as const),
      ambient: random.pick(['daylight', 'warmLed', 'incandescent'] as const),
      shadowEdge: {
        throughMm: [NAIL_MM[0] + random.between(-8, 8), NAIL_MM[1] + random.between(-8, 8)],
        azimuthDeg: random.between(0, 360),
        depth: random.between(0.4, 0.8),
        softMm: random.between(0.5, 6),
      },
    },
  }),
  driedBlood: (random) => ({ wound: { driedBloodCount: random.whole(5, 9), crustCount: random.whole(2, 4) } }),
};

/** `misleadingSpec('iodine', 1, 'light', false)`: iodine, and no redness at all. */
export function misleadingSpec(kind: Misleading, seed: number, skinClass: SkinClass, isRed: boolean): PhantomSpec {
  const random = randomSource(seed, `misleading ${kind}`);
  const { wound, light }: Overrides = kind === 'polish' ? {} : ADD[kind](random);
  const spec = cleanSpec(seed, { skinClass, light, wound: { ...wound, ...(isRed ? {} : { redness: [] }) } });
  if (kind !== 'polish') return spec;
  return { ...spec, toe: { ...spec.toe, nail: { ...spec.toe.nail, polish: random.pick(VARNISHES) } } };
}
