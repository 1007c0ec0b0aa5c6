/**
 * A small simulator of a printed card in a photo, apart from the code under test: random printers, tone curves of other
 * families than the one that is fitted, lights, exposure, noise, rounding and clipping.
 */
import { OWN_CARD } from '../../../lib/card/own-card';
import type { Patch } from '../../../lib/card/card-geometry';
import type { CodeTriple, PatchReading, WhiteSample } from '../../../lib/colour/card-readings';
import { isInsideOutline } from '../../../lib/rectify/inside-outline';
import type { PointMm } from '../../../lib/units';
import { seededNormal } from '../../seeded-random';

type Random = () => number;
/** Printed light of a patch relative to paper, per channel. */
export type Printer = (patch: Patch) => CodeTriple;
/** Sensor light 0…1 to signal 0…1, before rounding to a code. */
export type Tone = (light: number) => number;

export interface Scene {
  readonly printer: Printer;
  readonly tone: Tone;
  /** Light on the card per channel, paper = this at full; above 1 it clips. */
  readonly lightAt: (point: PointMm) => CodeTriple;
  readonly codeNoise: number;
}

const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
const srgbLight = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
const srgbSignal = (l: number): number => (l <= 0.0031308 ? 12.92 * l : 1.055 * l ** (1 / 2.4) - 0.055);

/** Slope off by some 10 %, black of 2 to 10 %, a cast in the greys. */
export function randomPrinter(random: Random): Printer {
  const slope = Math.exp(0.1 * seededNormal(random));
  const black = 0.05 * Math.exp(0.35 * seededNormal(random));
  const cast = [0, 1, 2].map(() => 1 + 0.03 * seededNormal(random));
  return ({ designSrgb }) => {
    const [red, green, blue] = designSrgb.map((code, c) => black + (1 - black) * srgbLight(code / 255) ** (slope * cast[c]));
    return [red, green, blue];
  };
}

/** The printer whose print is exactly the design above a 5 % black. */
export const nominalPrinter: Printer = ({ designSrgb }) => {
  const [red, green, blue] = designSrgb.map((code) => 0.05 + 0.95 * srgbLight(code / 255));
  return [red, green, blue];
};

export const srgbTone: Tone = (light) => srgbSignal(light);

/** Six families: standard, power, S-curve, Reinhard shoulder, exponential film, and all of these together. */
export function randomTone(random: Random): Tone {
  const mix = between(random, 0, 0.5);
  const knee = between(random, 0, 1);
  const power = between(random, 0.9, 1.1);
  const film = between(random, 0.3, 2);
  const sCurve = (v: number, m: number) => (1 - m) * v + m * (3 * v * v - 2 * v * v * v);
  const shoulder = (l: number) => (l * (1 + knee)) / (1 + knee * l);
  const families: Tone[] = [
    srgbTone,
    (l) => srgbSignal(l) ** power,
    (l) => sCurve(srgbSignal(l), mix),
    (l) => srgbSignal(shoulder(l)),
    (l) => srgbSignal((1 - Math.exp(-film * l)) / (1 - Math.exp(-film))),
    (l) => sCurve(srgbSignal(shoulder(l)) ** power, 0.7 * mix),
  ];
  return families[Math.floor(random() * families.length)];
}

/** What imperfect automatic white balance leaves of five lights: daylight, shade, warm lamp, incandescent, tube. */
export const FIVE_LIGHTS: readonly CodeTriple[] = [
  [1, 1, 1],
  [0.92, 1, 1.12],
  [1.12, 1, 0.8],
  [1.2, 1, 0.65],
  [0.95, 1.05, 0.9],
];

/** Even light whose brightest channel reaches `exposure` on paper. */
export function evenLight(light: CodeTriple, exposure: number): Scene['lightAt'] {
  const scale = exposure / Math.max(...light);
  return () => [light[0] * scale, light[1] * scale, light[2] * scale];
}

/** Code values that a median over a spot would give, for light relative to paper. */
export function codesOf(scene: Scene, light: CodeTriple, at: PointMm, random: Random): CodeTriple {
  const on = scene.lightAt(at);
  const [red, green, blue] = light.map((value, c) => {
    const signal = 255 * scene.tone(Math.min(1, value * on[c])) + scene.codeNoise * seededNormal(random);
    return Math.min(255, Math.max(0, Math.round(signal)));
  });
  return [red, green, blue];
}

export function readingsOf(scene: Scene, random: Random): PatchReading[] {
  return OWN_CARD.patches.map((patch) => {
    const codeMedian = codesOf(scene, scene.printer(patch), patch.centre, random);
    return { patch, codeMedian, clippedShare: Math.max(...codeMedian) >= 254 ? 1 : 0, spread: scene.codeNoise };
  });
}

/** Bare paper on a 4 mm grid, clear of notch, patches and fiducials. */
export function paperOf(scene: Scene, random: Random): WhiteSample[] {
  const spots: WhiteSample[] = [];
  const far = (at: PointMm, centre: PointMm, sizeMm: number) =>
    Math.max(Math.abs(at.acrossMm - centre.acrossMm), Math.abs(at.downMm - centre.downMm)) > sizeMm / 2 + 1.5;
  for (let downMm = 2; downMm < OWN_CARD.heightMm - 1; downMm += 4) {
    for (let acrossMm = 2; acrossMm < OWN_CARD.widthMm - 1; acrossMm += 4) {
      const at = { acrossMm, downMm };
      const bare =
        !isInsideOutline(at, OWN_CARD.notch) &&
        OWN_CARD.patches.every(({ centre, widthMm }) => far(at, centre, widthMm)) &&
        OWN_CARD.fiducials.every(({ centre, sizeMm }) => far(at, centre, sizeMm));
      if (bare) spots.push({ ...at, code: codesOf(scene, [1, 1, 1], at, random) });
    }
  }
  return spots;
}
