import { solveLinear } from '../rectify/solve-linear';
import { MAD_TO_SIGMA } from '../rectify/constants';
import { HUBER_TUNING, TUKEY_TUNING } from './constants';
import { medianOf } from '../rectify/median-of';

/** What is believed about one parameter before the data speak. */
export interface Prior {
  readonly mean: number;
  readonly sd: number;
}

export interface RidgeRow {
  /** One coefficient per parameter. */
  readonly basis: readonly number[];
  readonly target: number;
  /** Expected standard deviation of the target. */
  readonly sigma: number;
}

const HUBER_ROUNDS = 8;
const TUKEY_ROUNDS = 10;
/** A round that moves every residual by less than this share of the expected scatter has arrived. */
const SETTLED = 1e-4;

/**
 * Least squares with a prior on every parameter, in which rows that do not fit lose their weight.
 *
 * First rounds with Huber's weights at the expected scatter find the neighbourhood: convex, so the start does not matter,
 * and nearly least absolute deviations where scatter is larger. Later rounds with Tukey's weights, at the scatter that
 * is then seen, throw gross errors out altogether.
 * @param rows one per observation; may be fewer than parameters, the priors then decide
 * @param priors one per parameter, sd > 0
 * @returns parameters, and per row the residual (target − model) in units of the target
 * Source: Huber, Ann Math Stat 1964;35:73; Beaton and Tukey, Technometrics 1974;16:147; ridge as a Gaussian prior.
 * @example fitRobustRidge([], [{ mean: 0.3, sd: 1 }]).parameters[0] // 0.3
 */
export function fitRobustRidge(
  rows: readonly RidgeRow[],
  priors: readonly Prior[],
): { parameters: readonly number[]; residuals: readonly number[] } {
  let weights = rows.map(() => 1);
  let parameters: readonly number[] = solveRidge(rows, priors, weights);
  let residuals = residualsOf(rows, parameters);
  for (const [weigh, rounds] of [[huberWeights, HUBER_ROUNDS], [tukeyWeights, TUKEY_ROUNDS]] as const) {
    for (let round = 0, moved = Infinity; round < rounds && moved > SETTLED; round += 1) {
      weights = weigh(residuals.map((residual, index) => Math.abs(residual) / rows[index].sigma));
      parameters = solveRidge(rows, priors, weights);
      const before = residuals;
      residuals = residualsOf(rows, parameters);
      moved = residuals.reduce((most, one, index) => Math.max(most, Math.abs(one - before[index]) / rows[index].sigma), 0);
    }
  }
  return { parameters, residuals };
}

const huberWeights = (scaled: readonly number[]): number[] => scaled.map((size) => (size <= HUBER_TUNING ? 1 : HUBER_TUNING / size));

function tukeyWeights(scaled: readonly number[]): number[] {
  // The data may be noisier than expected, never trusted more than expected.
  const scale = Math.max(1, MAD_TO_SIGMA * medianOf(scaled));
  const cut = TUKEY_TUNING * scale;
  return scaled.map((size) => (size < cut ? (1 - (size / cut) ** 2) ** 2 / scale ** 2 : 0));
}

function residualsOf(rows: readonly RidgeRow[], parameters: readonly number[]): number[] {
  return rows.map(({ basis, target }) => target - basis.reduce((sum, value, k) => sum + value * parameters[k], 0));
}

function solveRidge(rows: readonly RidgeRow[], priors: readonly Prior[], weights: readonly number[]): number[] {
  const right = priors.map(({ mean, sd }) => mean / sd ** 2);
  const normal = priors.map(({ sd }, k) => priors.map((_, j) => (j === k ? 1 / sd ** 2 : 0)));
  rows.forEach(({ basis, target, sigma }, index) => {
    const weight = weights[index] / sigma ** 2;
    if (weight === 0) return;
    for (let k = 0; k < basis.length; k += 1) {
      const share = weight * basis[k];
      right[k] += share * target;
      for (let j = 0; j <= k; j += 1) normal[k][j] += share * basis[j];
    }
  });
  for (let k = 0; k < normal.length; k += 1) for (let j = 0; j < k; j += 1) normal[j][k] = normal[k][j];
  const solution = solveLinear(normal, right);
  if (!solution) throw new RangeError(`fitRobustRidge: every prior needs sd > 0, received ${priors.map((p) => p.sd)}`);
  return solution;
}
