import type { DeltaE } from '../units';
import { deltaE } from '../units';
import { LEAST_MATCH_PATCHES, MATCH_FLOOR, MATCH_SIGMA, MATCH_SD } from './constants';
import { convertLinearToLab65 } from './convert-linear-to-lab65';
import { differenceCiede2000 } from './difference-ciede2000';
import type { LinearRgb } from './encodings';
import { multiplyMatrixVector } from './multiply-matrix-vector';
import type { Matrix3, Vector3 } from './multiply-matrix-vector';
import type { PatchLight } from './read-patch-light';
import { fitRobustRidge } from './robust-ridge';

/** Brings this photo's light to the colours that the same card had in the baseline photo. */
export interface ColourMatch {
  readonly kind: 'none' | 'gains' | 'matrix';
  /** Linear light of this photo → linear light as in the baseline photo. */
  readonly matrix: Matrix3;
  /** Mean ΔE00 of patches left out of the fit, and the same without any match; null without common patches. */
  readonly leaveOneOutDeltaE: DeltaE | null;
  readonly unmatchedDeltaE: DeltaE | null;
}

interface Pair {
  readonly now: Vector3;
  readonly baseline: Vector3;
}
type Fit = (pairs: readonly Pair[]) => Matrix3;

const IDENTITY: Matrix3 = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * Finds the linear map, if any, that brings the card's colours of this photo to those of the baseline photo.
 *
 * Nothing, three gains, and a 3 × 3 matrix that leaves greys alone are tried; the one that predicts patches it has not
 * seen best is taken, so that a match is made only where it helps. Patches of unknown print are no obstacle: it is the
 * same print both times.
 * @param now light of this photo's patches relative to paper
 * @param baseline the same of the baseline photo
 * @returns the match; kind `none` with fewer than six patches in common or where no match lowers the error
 * Source: white-preserving least squares after Finlayson and Drew 1997 (from memory); choice by leave-one-out.
 * @example matchToBaseline([], []).kind // 'none'
 */
export function matchToBaseline(now: readonly PatchLight[], baseline: readonly PatchLight[]): ColourMatch {
  const pairs = commonPatches(now, baseline);
  const unmatched = meanError(pairs, () => IDENTITY);
  const errors = { leaveOneOutDeltaE: unmatched, unmatchedDeltaE: unmatched };
  const none: ColourMatch = { kind: 'none', matrix: IDENTITY, ...errors };
  if (unmatched === null || pairs.length < LEAST_MATCH_PATCHES) return none;
  let best = none;
  for (const [kind, fit] of [['gains', fitGains], ['matrix', fitMatrix]] as const) {
    const error = meanError(pairs, fit);
    if (error !== null && error < (best.leaveOneOutDeltaE ?? 0)) {
      best = { kind, matrix: fit(pairs), leaveOneOutDeltaE: error, unmatchedDeltaE: unmatched };
    }
  }
  return best;
}

const asVector = ({ red, green, blue }: LinearRgb): Vector3 => [red, green, blue];

function commonPatches(now: readonly PatchLight[], baseline: readonly PatchLight[]): Pair[] {
  const before = new Map(baseline.map(({ patch, light }) => [patch.name, light]));
  return now.flatMap(({ patch, light }) => {
    const earlier = before.get(patch.name);
    return earlier ? [{ now: asVector(light), baseline: asVector(earlier) }] : [];
  });
}

/** Mean ΔE00 of every pair under the match that is fitted to all the others. */
function meanError(pairs: readonly Pair[], fit: Fit): DeltaE | null {
  if (pairs.length === 0) return null;
  const lab65Of = ([red, green, blue]: Vector3) => convertLinearToLab65({ red, green, blue });
  const errors = pairs.map(({ now, baseline }, left) => {
    const matrix = fit(pairs.filter((_, index) => index !== left));
    return differenceCiede2000(lab65Of(multiplyMatrixVector(matrix, now)), lab65Of(baseline));
  });
  return deltaE(errors.reduce((sum, error) => sum + error, 0) / errors.length);
}

/** Dark patches must not count for nothing: departures are taken relative to the patch's own light. */
const scaleOf = (light: number): number => Math.max(light, 0) + MATCH_FLOOR;

function fitGains(pairs: readonly Pair[]): Matrix3 {
  const [red, green, blue] = [0, 1, 2].map((channel) => {
    const rows = pairs.map(({ now, baseline }) => {
      const scale = scaleOf(baseline[channel]);
      return { basis: [now[channel] / scale], target: (baseline[channel] - now[channel]) / scale, sigma: MATCH_SIGMA };
    });
    return 1 + fitRobustRidge(rows, [{ mean: 0, sd: MATCH_SD }]).parameters[0];
  });
  return [
    [red, 0, 0],
    [0, green, 0],
    [0, 0, blue],
  ];
}

/** Each channel borrows from the differences to the other two, which are zero for greys. */
function fitMatrix(pairs: readonly Pair[]): Matrix3 {
  const [toRed, toGreen, toBlue] = [0, 1, 2].map((channel) => {
    const others = [0, 1, 2].filter((other) => other !== channel);
    const rows = pairs.map(({ now, baseline }) => {
      const scale = scaleOf(baseline[channel]);
      return {
        basis: others.map((other) => (now[other] - now[channel]) / scale),
        target: (baseline[channel] - now[channel]) / scale,
        sigma: MATCH_SIGMA,
      };
    });
    return fitRobustRidge(rows, others.map(() => ({ mean: 0, sd: MATCH_SD }))).parameters;
  });
  return [
    [1 - toRed[0] - toRed[1], toRed[0], toRed[1]],
    [toGreen[0], 1 - toGreen[0] - toGreen[1], toGreen[1]],
    [toBlue[0], toBlue[1], 1 - toBlue[0] - toBlue[1]],
  ];
}
