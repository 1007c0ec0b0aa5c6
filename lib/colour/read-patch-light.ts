import type { Patch } from '../card/card-geometry';
import type { PatchReading } from './card-readings';
import { CLIPPED_FROM_CODE, MAX_CODE } from './constants';
import type { LinearRgb } from './encodings';
import { paperLightAt } from './shading';
import type { Shading } from './shading';
import { logLightOf } from './tone-curve';
import type { ToneCurve } from './tone-curve';

/** A patch's light relative to bare paper at the same place. */
export interface PatchLight {
  readonly patch: Patch;
  readonly light: LinearRgb;
}

/**
 * The light of one patch relative to bare paper, shading and white balance removed.
 * @param reading the patch's median code values
 * @param curve the photo's tone curve
 * @param shading light of bare paper over the card, in the units of `toneTables(curve)`
 * @returns the light; null where a channel is clipped
 * @example readPatchLight({ patch, codeMedian: [255, 80, 80], clippedShare: 0, spread: 1 }, curve, shading) // null
 */
export function readPatchLight(reading: PatchReading, curve: ToneCurve, shading: Shading): PatchLight | null {
  if (Math.max(...reading.codeMedian) >= CLIPPED_FROM_CODE) return null;
  const top = logLightOf(curve, MAX_CODE);
  const [red, green, blue] = reading.codeMedian.map((code) => Math.exp(logLightOf(curve, code) - top));
  const paper = paperLightAt(shading, reading.patch.centre);
  return { patch: reading.patch, light: { red: red / paper.red, green: green / paper.green, blue: blue / paper.blue } };
}
