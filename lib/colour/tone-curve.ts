import type { LinearTables } from '../rectify/resample-map';
import { MAX_CODE, SRGB_CURVE } from './constants';
import { decodeSrgb } from './decode-srgb';

/**
 * A phone's tone curve, from code value to light, as three departures from the sRGB curve; all zero = sRGB.
 *
 * ln light = (1 + gamma) · ln l + contrast · C(v) + shoulder · l, with v = code / 255 and l the sRGB light of the code:
 * C undoes an S-curve v → v − contrast · sin(2πv)/2π, and the last term undoes a shoulder l → l / (1 + shoulder · l),
 * both to first order. Linear in its parameters, so that they can be fitted in one step with priors.
 */
export interface ToneCurve {
  readonly gamma: number;
  readonly contrast: number;
  readonly shoulder: number;
}

/** Below this code the logarithm would run away; half a code is what rounding hides anyway. */
const DARKEST_CODE = 0.5;

export interface ToneTerms {
  /** ln of the sRGB light of the code. */
  readonly logLight: number;
  /** d ln l / d code. */
  readonly slopePerCode: number;
  readonly gamma: number;
  readonly contrast: number;
  readonly shoulder: number;
}

/**
 * The sRGB term of the curve and the factors of its three departures, at one code value.
 * @param code 0…255, fractions allowed
 * @returns the terms; `slopePerCode` holds above the sRGB curve's short straight part, and is near enough within it
 * @example toneTerms(255).shoulder // 1
 */
export function toneTerms(code: number): ToneTerms {
  const v = Math.max(code, DARKEST_CODE) / MAX_CODE;
  const light = decodeSrgb(v * MAX_CODE);
  const slope = SRGB_CURVE.exponent / (v + SRGB_CURVE.offset);
  return {
    logLight: Math.log(light),
    slopePerCode: slope / MAX_CODE,
    gamma: Math.log(light),
    contrast: (slope * Math.sin(2 * Math.PI * v)) / (2 * Math.PI),
    shoulder: light,
  };
}

/**
 * Natural logarithm of the light behind a code value; only differences between two codes mean anything.
 * @param curve the photo's tone curve
 * @param code 0…255
 * @returns ln light, scaled so that sRGB white gives the shoulder term alone
 * @example logLightOf({ gamma: 0, contrast: 0, shoulder: 0 }, 255) // 0
 */
export function logLightOf(curve: ToneCurve, code: number): number {
  const terms = toneTerms(code);
  return terms.logLight + curve.gamma * terms.gamma + curve.contrast * terms.contrast + curve.shoulder * terms.shoulder;
}

/**
 * The curve as tables for fast conversion of a whole photo: light of every code value, 1 at code 255.
 * @param curve the photo's tone curve
 * @returns the same table for the three channels (the channels' gains are part of the card's white), code 0 = no light,
 * never falling; codes above the clipping limit continue the curve smoothly
 * @example toneTables({ gamma: 0, contrast: 0, shoulder: 0 }).red[255] // 1
 */
export function toneTables(curve: ToneCurve): LinearTables {
  const top = logLightOf(curve, MAX_CODE);
  const table = new Float32Array(MAX_CODE + 1);
  for (let code = 1; code <= MAX_CODE; code += 1) {
    table[code] = Math.max(table[code - 1], Math.exp(logLightOf(curve, code) - top));
  }
  return { red: table, green: table, blue: table };
}
