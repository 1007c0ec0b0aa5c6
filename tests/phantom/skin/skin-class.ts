/** The six classes of skin colour by typology angle, and the melanin that makes each of them. */
import { itaDeg, reflectanceToLab65 } from './skin-lab65';
import { skinReflectance } from './skin-reflectance';

export type SkinClass = 'very light' | 'light' | 'intermediate' | 'tan' | 'brown' | 'dark';
export const SKIN_CLASSES: readonly SkinClass[] = ['very light', 'light', 'intermediate', 'tan', 'brown', 'dark'];

/** Blood of a resting toe: an assumption, somewhat above the 0.2 % that Jacques gives for skin in general. */
export const RESTING_BLOOD_SHARE = 0.005;
export const RESTING_SATURATION = 0.72;

/** Lower bound of each class, degrees (Chardon 1991; Del Bino and Bernerd 2013): > 55, > 41, > 28, > 10, > −30, rest. */
const LOWER_BOUND_DEG: Readonly<Record<SkinClass, number>> = {
  'very light': 55,
  light: 41,
  intermediate: 28,
  tan: 10,
  brown: -30,
  dark: -90,
};

/** The angles that random phantoms are drawn from, well inside each class. */
export const ITA_RANGE_DEG: Readonly<Record<SkinClass, readonly [number, number]>> = {
  'very light': [56.5, 61],
  light: [43, 53],
  intermediate: [30, 39],
  tan: [13, 26],
  brown: [-26, 6],
  dark: [-50, -34],
};

/** The class an angle falls in. `skinClassOf(45)` is light. */
export function skinClassOf(angleDeg: number): SkinClass {
  return SKIN_CLASSES.find((name) => angleDeg > LOWER_BOUND_DEG[name]) ?? 'dark';
}

/** ITA of resting skin with this share of melanosomes. */
export function itaOfMelanin(melaninShare: number, bloodShare = RESTING_BLOOD_SHARE): number {
  return itaDeg(reflectanceToLab65(skinReflectance({ melaninShare, bloodShare, saturation: RESTING_SATURATION })));
}

/** The share of melanosomes that gives the wanted angle, by halving; ITA falls steadily as melanin rises. */
export function melaninForIta(targetDeg: number, bloodShare = RESTING_BLOOD_SHARE): number {
  let low = 0;
  let high = 0.7;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (itaOfMelanin(middle, bloodShare) > targetDeg) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
