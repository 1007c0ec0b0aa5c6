import { cumulativeStdNormalProbability } from 'simple-statistics';
import { MANN_KENDALL_DIVISOR, MANN_KENDALL_TERM, MOST_FOR_EXACT_TAIL } from './constants';
import { inversionDistribution } from './inversion-distribution';
import { tieSizes } from './tie-sizes';

export interface MannKendall {
  readonly n: number;
  /** Pairs that rise less pairs that fall. */
  readonly s: number;
  readonly variance: number;
  /** With continuity correction; 0 where S is 0. */
  readonly z: number;
  /** Chance of an S at least this low, and at least this high, where there is no trend. */
  readonly fallingTail: number;
  readonly risingTail: number;
  readonly exact: boolean;
}

/**
 * Mann–Kendall test for a steady rise or fall, with exact one-sided tails for the few photos that a course has.
 *
 * @param values in order of time, at least two
 * @returns S, its variance corrected for ties, and both one-sided tails; exact up to 20 values, ties counted
 * @throws RangeError for fewer than two values
 * Assumes independent values. Source: Mann 1945; Kendall 1975; the tails by counting inversions of a multiset.
 * @example mannKendall([5, 6, 11, 8, 10]).risingTail // 0.1167
 */
export function mannKendall(values: readonly number[]): MannKendall {
  const n = values.length;
  if (n < 2) throw new RangeError(`mannKendall: at least two values are needed, received ${n}`);
  let s = 0;
  for (let j = 1; j < n; j++) for (let i = 0; i < j; i++) s += Math.sign(values[j] - values[i]);
  const ties = tieSizes(values);
  const variance = mannKendallVariance(n, ties);
  const z = variance === 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(variance);
  if (n > MOST_FOR_EXACT_TAIL) {
    return { n, s, variance, z, fallingTail: normalTail(s, variance), risingTail: normalTail(-s, variance), exact: false };
  }
  const { fallingTail, risingTail } = exactTails(n, s, ties);
  return { n, s, variance, z, fallingTail, risingTail, exact: true };
}

/**
 * Variance of S where nothing rises or falls.
 *
 * @param n number of values, ≥ 2
 * @param ties sizes of the groups of equal values
 * @example mannKendallVariance(11, [4, 2]) // 155.33
 */
export function mannKendallVariance(n: number, ties: readonly number[]): number {
  const term = (size: number) => size * (size - 1) * (2 * size + MANN_KENDALL_TERM);
  return ties.reduce((rest, size) => rest - term(size), term(n)) / MANN_KENDALL_DIVISOR;
}

/** P(S ≤ s) by the normal curve, half a step of S (which moves in twos) allowed for. */
const normalTail = (s: number, variance: number): number =>
  variance === 0 ? 1 : cumulativeStdNormalProbability((s + 1) / Math.sqrt(variance));

/** S = untied pairs − 2 · inversions, so many inversions are a low S. */
function exactTails(n: number, s: number, ties: readonly number[]): { fallingTail: number; risingTail: number } {
  const distribution = inversionDistribution(n, ties);
  const inversions = (distribution.length - 1 - s) / 2;
  let [fallingTail, risingTail] = [0, 0];
  distribution.forEach((chance, count) => {
    if (count >= inversions) fallingTail += chance;
    if (count <= inversions) risingTail += chance;
  });
  return { fallingTail: Math.min(1, fallingTail), risingTail: Math.min(1, risingTail) };
}
