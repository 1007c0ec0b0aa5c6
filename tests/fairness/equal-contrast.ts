/** The same toe, wound, light and phone in every class of skin, with redness of the same contrast in the erythema index. */
import { daylightSrgb } from '../phantom/camera/phone-sensor';
import type { PhantomSpec } from '../phantom/phantom-spec';
import { randomSpec } from '../phantom/random-spec';
import { randomSource } from '../phantom/random/random-source';
import { ITA_RANGE_DEG, melaninForIta, RESTING_BLOOD_SHARE, RESTING_SATURATION, type SkinClass } from '../phantom/skin/skin-class';
import { skinReflectance } from '../phantom/skin/skin-reflectance';

/** Rise of the index in the plateau, seen in daylight by the standard observer; redness of clinical size is 6–20 (measurement page). */
export const CONTRAST_EI = 12;
const MOST_BLOOD = 0.3;
const HALVINGS = 40;

/** Small pictures, for there are many: 7.5 px/mm, above the gate of 6. */
const [WIDTH_PX, HEIGHT_PX, PX_PER_MM, DISTANCE_MM] = [760, 960, 7.5, 280];

/** Blood to add to resting skin of this angle so that its index rises by `contrastEi`. */
export function bloodForContrast(itaDeg: number, contrastEi: number): number {
  const melaninShare = melaninForIta(itaDeg);
  const index = (bloodShare: number): number => {
    const [red, green] = daylightSrgb(skinReflectance({ melaninShare, bloodShare, saturation: RESTING_SATURATION }));
    return 100 * Math.log10(red / green);
  };
  const resting = index(RESTING_BLOOD_SHARE);
  let [low, high] = [0, MOST_BLOOD];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (index(RESTING_BLOOD_SHARE + middle) - resting < contrastEi) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Photo `i` of a class: all but the skin's melanin and the blood in it is the same in every class. */
export function equalContrastSpec(skinClass: SkinClass, i: number, seed: number): PhantomSpec {
  const own = seed * 10_007 + i;
  const random = randomSource(own, 'fairness');
  const [from, to] = ITA_RANGE_DEG[skinClass];
  const itaDeg = from + (to - from) * random.between(0.2, 0.8);
  const redness = {
    where: 'treatedFold' as const, addedBloodShare: bloodForContrast(itaDeg, CONTRAST_EI), widthMm: random.between(2, 5.5), edgeMm: random.between(1, 3),
    from: random.between(0, 0.25), to: random.between(0.7, 1), raggedness: random.between(0.1, 0.8), tongueMm: 0, spot: null,
  };
  const drawn = randomSpec(own, {
    skinClass,
    wound: { redness: [redness], iodine: 0 },
    pose: { heightOffsetMm: 0.5 },
    light: { gradient: 0.1, spreadDeg: 8, elevationDeg: 60, ambientShare: 0.55 },
    camera: {
      widthPx: WIDTH_PX, heightPx: HEIGHT_PX, distanceMm: DISTANCE_MM, focal35Mm: (PX_PER_MM * DISTANCE_MM * Math.hypot(36, 24)) / Math.hypot(WIDTH_PX, HEIGHT_PX),
      tiltDeg: random.between(0, 18), rollDeg: random.between(-6, 6), aimMm: [0, 2], opticsBlurPx: 0.6, defocusPx: 0, motionPx: 0, exposure: 0.9, denoise: 0.3, sharpen: 0.3, orientationTag: 1,
    },
  });
  return { ...drawn, toe: { ...drawn.toe, skin: { ...drawn.toe.skin, itaDeg }, nail: { ...drawn.toe.nail, polish: null } } };
}
