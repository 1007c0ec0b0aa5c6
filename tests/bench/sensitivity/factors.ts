/** What is turned, one thing at a time, around a photo that has nothing the matter with it. */
import { LIGHT_NAMES } from '../../phantom/light/light-spectra';
import type { PhantomSpec } from '../../phantom/phantom-spec';
import { randomSpec, type Overrides } from '../../phantom/random-spec';
import { SKIN_CLASSES } from '../../phantom/skin/skin-class';

/** Toes that every level is tried on, each seen from another side, so that a lean shows toward the fold and away from it. */
export const TOES = [
  { seed: 101, azimuthDeg: 20 },
  { seed: 202, azimuthDeg: 140 },
  { seed: 303, azimuthDeg: 260 },
] as const;
export type Toe = (typeof TOES)[number];

export interface Factor {
  readonly name: string;
  readonly unit: string;
  /** The gate that limits this factor, and its limit in the factor's own unit; null where no single gate does. */
  readonly gate: { readonly id: string; readonly limit: number } | null;
  readonly levels: readonly (number | string)[];
  /** The level that the base photo has: rendered once for all factors. */
  readonly baseLevel: number | string;
  readonly turn: (level: never) => Overrides;
}

const factor = <L extends number | string>(one: Omit<Factor, 'turn' | 'levels' | 'baseLevel'> & { levels: readonly L[]; baseLevel: NoInfer<L>; turn: (level: L) => Overrides }): Factor => one as Factor;

/** In pixels of blur at 10 px/mm. */
const BASE_PX_PER_MM = 10;
const BASE_DISTANCE_MM = 260;
const LONG_PX = 1600;
const SHORT_PX = 1200;

export const FACTORS: readonly Factor[] = [
  factor({ name: 'tilt', unit: '°', gate: { id: 'tilt', limit: 35 }, levels: [0, 10, 20, 30, 36, 42], baseLevel: 10, turn: (tiltDeg) => ({ camera: { tiltDeg } }) }),
  factor({ name: 'height of the nail against the card', unit: 'mm', gate: null, levels: [-5, -2.5, 0, 2.5, 5], baseLevel: 0, turn: (heightOffsetMm) => ({ pose: { heightOffsetMm: -heightOffsetMm } }) }),
  // The same lens from farther away: the toe becomes smaller in the picture. 10 px/mm at 260 mm, 6 px/mm at 433 mm.
  factor({ name: 'distance', unit: 'mm', gate: { id: 'resolution', limit: (BASE_PX_PER_MM * BASE_DISTANCE_MM) / 6 }, levels: [170, 260, 350, 420, 520], baseLevel: 260, turn: (distanceMm) => ({ camera: { distanceMm } }) }),
  factor({ name: 'defocus', unit: 'px at 10 px/mm', gate: null, levels: [0, 1.2, 2, 3, 4.5], baseLevel: 0, turn: (defocusPx) => ({ camera: { defocusPx } }) }),
  factor({ name: 'light', unit: '', gate: null, levels: LIGHT_NAMES, baseLevel: 'daylight', turn: (key) => ({ light: { key, ambient: key } }) }),
  factor({ name: 'exposure', unit: 'white = 1', gate: null, levels: [0.12, 0.3, 0.6, 0.9, 1.3], baseLevel: 0.9, turn: (exposure) => ({ camera: { exposure } }) }),
  factor({ name: 'skin class', unit: '', gate: null, levels: SKIN_CLASSES, baseLevel: 'intermediate', turn: (skinClass) => ({ skinClass }) }),
  factor({ name: 'tone curve', unit: 'contrast', gate: null, levels: [0, 0.4, 0.8, 1.2], baseLevel: 0.4, turn: (toneContrast) => ({ camera: { toneContrast } }) }),
  factor({ name: 'print scale', unit: '× designed', gate: null, levels: [0.94, 0.97, 1, 1.03], baseLevel: 1, turn: (printScale) => ({ card: { printScale } }) }),
];

/** The spec of one toe with one factor turned. `levelSpec(TOES[0], {})` is the base photo. */
export function levelSpec(toe: Toe, turned: Overrides): PhantomSpec {
  return randomSpec(toe.seed, {
    skinClass: turned.skinClass ?? 'intermediate',
    toe: { wrinkleDepthMm: 0.15 },
    wound: {
      side: 'left', stripMm: 2.5, swellingMm: 0.4, rawShare: 0.6, granulationMm: 0, sloughShare: 0.2, driedBloodCount: 0, crustCount: 0, macerationMm: 0, iodine: 0, wetness: 0.3,
      redness: [{ where: 'treatedFold', addedBloodShare: 0.028, widthMm: 4, edgeMm: 2, from: 0.1, to: 0.9, raggedness: 0.3, tongueMm: 0, spot: null }],
    },
    pose: { tipGapMm: 2.5, sideShiftMm: 0, yawDeg: 0, pitchDeg: 2, rollDeg: 0, heightOffsetMm: 0, ...turned.pose },
    light: { key: 'daylight', ambient: 'daylight', ambientShare: 0.55, elevationDeg: 60, azimuthDeg: 320, spreadDeg: 8, gradient: 0.1, ...turned.light },
    camera: {
      phoneSeed: 3, widthPx: SHORT_PX, heightPx: LONG_PX, distanceMm: BASE_DISTANCE_MM,
      focal35Mm: (BASE_PX_PER_MM * BASE_DISTANCE_MM * Math.hypot(36, 24)) / Math.hypot(LONG_PX, SHORT_PX),
      tiltDeg: 10, azimuthDeg: toe.azimuthDeg, rollDeg: 4, aimMm: [0, 2], k1: 0.01, k2: 0, opticsBlurPx: 0.7, defocusPx: 0, motionPx: 0, vignetting: 0.1,
      exposure: 0.9, whiteBalance: [1.02, 0.97], fullWell: 7000, readNoise: 0.0015, toneContrast: 0.4, toneShoulder: 0.25, saturation: 1.05, denoise: 0.3, sharpen: 0.3,
      jpegQuality: 88, orientationTag: 1, ...turned.camera,
    },
    card: { printScale: 1, paperWhite: 0.87, inkBlack: 0.045, inkGamma: 1, ...turned.card },
    ground: 'cloth',
    groundTone: 0.7,
  });
}
