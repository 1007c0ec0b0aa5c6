import { CODE_SIGMA, CURVE_CHOICE_NOISE, MAX_CODE, NOMINAL_BLACK, PATCH_SIGMA, TONE_PRIORS } from './constants';
import { medianOf } from '../rectify/median-of';
import type { Prior, RidgeRow } from './robust-ridge';
import { fitRobustRidge } from './robust-ridge';
import { logLightOf, toneTerms } from './tone-curve';
import type { ToneCurve } from './tone-curve';

/** One grey patch in one channel, beside the bare paper that would be seen at the same place. */
export interface GreyPair {
  readonly name: string;
  /** Code value of the patch, 0…255. */
  readonly code: number;
  /** Code value of bare paper at the patch's place, 0…255. */
  readonly whiteCode: number;
  /** Light of the patch relative to bare paper, > 0: what was printed, or what is known of this card. */
  readonly expectedLight: number;
}

export interface FittedToneCurve {
  readonly curve: ToneCurve;
  /** Median of |ln(light read / light expected)| of each grey patch when the curve is fitted without it. */
  readonly leaveOneOut: number;
}

/** The standard curve: what is assumed where the greys do not speak for another. */
export const SRGB_CURVE_ITSELF: ToneCurve = { gamma: 0, contrast: 0, shoulder: 0 };

/** A prior that leaves no choice. */
const CERTAIN: Prior = { mean: 0, sd: 1e-6 };

/**
 * Estimates a photo's tone curve from the card's grey patches.
 *
 * Printer and camera are confounded: a steeper printer looks like a steeper camera. Known patches fix the printer;
 * otherwise two printer parameters (slope, black) share the explanation under the priors of `TONE_PRIORS`. The standard
 * curve is kept where it predicts patches better than the fitted one predicts patches it has not seen (median over
 * patches, by more than the comparison's own noise), so that a card printed badly or a reflex on a patch does not make
 * the colours worse than no correction.
 * @param pairs grey patches, any number, one entry per channel; clipped ones already left out
 * @param printerKnown are the expected values measured on this card (or read from it earlier), not just its design?
 * @returns the curve, and how well it predicts a patch it has not seen
 * @example fitToneCurve([], false).curve.gamma // 0
 */
export function fitToneCurve(pairs: readonly GreyPair[], printerKnown: boolean): FittedToneCurve {
  const standard = medianOf(pairs.map((pair) => Math.abs(misfit(SRGB_CURVE_ITSELF, pair))));
  const fitted = leaveOneOut(pairs, printerKnown);
  return fitted < standard + CURVE_CHOICE_NOISE
    ? { curve: fitOnce(pairs, printerKnown), leaveOneOut: fitted }
    : { curve: SRGB_CURVE_ITSELF, leaveOneOut: standard };
}

/** ln of light read over light expected. */
function misfit(curve: ToneCurve, { code, whiteCode, expectedLight }: GreyPair): number {
  return logLightOf(curve, code) - logLightOf(curve, whiteCode) - Math.log(expectedLight);
}

function leaveOneOut(pairs: readonly GreyPair[], printerKnown: boolean): number {
  const names = [...new Set(pairs.map(({ name }) => name))];
  const errors = names.flatMap((left) => {
    const curve = fitOnce(pairs.filter(({ name }) => name !== left), printerKnown);
    return pairs.filter(({ name }) => name === left).map((pair) => Math.abs(misfit(curve, pair)));
  });
  return medianOf(errors);
}

function fitOnce(pairs: readonly GreyPair[], printerKnown: boolean): ToneCurve {
  const { gamma, contrast, shoulder, printerGamma, printerBlack } = TONE_PRIORS;
  const printer = printerKnown ? [CERTAIN, CERTAIN] : [printerGamma, printerBlack];
  const { parameters } = fitRobustRidge(pairs.map(toneRow), [gamma, contrast, shoulder, ...printer]);
  return withoutFalling({ gamma: parameters[0], contrast: parameters[1], shoulder: parameters[2] });
}

/** What the pair says: camera terms on the left, printer terms moved over with a minus sign, sRGB on the right. */
function toneRow({ code, whiteCode, expectedLight }: GreyPair): RidgeRow {
  const patch = toneTerms(code);
  const white = toneTerms(whiteCode);
  // Printed light = black + (1 − black) · inked; its log changes by these two for a steeper slope and a lighter black.
  const inked = Math.max(0, (expectedLight - NOMINAL_BLACK) / (1 - NOMINAL_BLACK));
  const bySlope = inked > 0 ? ((1 - NOMINAL_BLACK) * inked * Math.log(inked)) / expectedLight : 0;
  const byBlack = (NOMINAL_BLACK * (1 - inked)) / expectedLight;
  return {
    basis: [
      patch.gamma - white.gamma,
      patch.contrast - white.contrast,
      patch.shoulder - white.shoulder,
      -bySlope,
      -byBlack,
    ],
    target: Math.log(expectedLight) - (patch.logLight - white.logLight),
    sigma: Math.hypot(PATCH_SIGMA, CODE_SIGMA * patch.slopePerCode),
  };
}

/** Moves the curve toward the standard one until more code never means less light. */
function withoutFalling(curve: ToneCurve): ToneCurve {
  let { gamma, contrast, shoulder } = curve;
  while (falls({ gamma, contrast, shoulder })) {
    gamma *= 0.8;
    contrast *= 0.8;
    shoulder *= 0.8;
  }
  return { gamma, contrast, shoulder };
}

function falls(curve: ToneCurve): boolean {
  for (let code = 1; code <= MAX_CODE; code += 1) {
    if (logLightOf(curve, code) <= logLightOf(curve, code - 1)) return true;
  }
  return false;
}
