/** A value with the interval that holds it with the confidence of the t that was given. */
export interface WithInterval {
  readonly value: number;
  readonly from: number;
  readonly to: number;
}

export interface Agreement {
  readonly pairs: number;
  readonly bias: WithInterval;
  /** Standard deviation of the differences, n − 1. */
  readonly sd: number;
  readonly lowerLimit: WithInterval;
  readonly upperLimit: WithInterval;
}

const interval = (value: number, halfWidth: number): WithInterval => ({
  value,
  from: value - halfWidth,
  to: value + halfWidth,
});

/**
 * Agreement of two ways to measure the same things: bias, limits of agreement, and how well these are known.
 *
 * @param first measurements by the first way
 * @param second of the same things in the same order by the second way, same unit
 * @param limitFactor limits are bias ± this many SD: 2 in the paper, 1.96 for exactly 95 %
 * @param t quantile of Student's t for n − 1 degrees of freedom, e.g. 2.12 for 95 % and 17 pairs
 * @returns differences are first − second; SE of the bias SD/√n, of a limit √(3 · SD² / n)
 * @throws RangeError for unequal lengths or fewer than three pairs
 * Source: Bland and Altman 1986, Lancet i:307–10.
 * @example blandAltman([1, 2, 3], [0, 2, 4], 2, 4.303).bias.value // 0
 */
export function blandAltman(
  first: readonly number[],
  second: readonly number[],
  limitFactor: number,
  t: number,
): Agreement {
  const pairs = first.length;
  if (second.length !== pairs || pairs < 3) {
    throw new RangeError(`blandAltman: two equally long lists of at least 3 are needed, received ${pairs} and ${second.length}`);
  }
  const differences = first.map((value, index) => value - second[index]);
  const bias = differences.reduce((sum, value) => sum + value, 0) / pairs;
  const sd = Math.sqrt(differences.reduce((sum, value) => sum + (value - bias) ** 2, 0) / (pairs - 1));
  const limitHalfWidth = t * Math.sqrt((3 * sd ** 2) / pairs);
  return {
    pairs,
    bias: interval(bias, (t * sd) / Math.sqrt(pairs)),
    sd,
    lowerLimit: interval(bias - limitFactor * sd, limitHalfWidth),
    upperLimit: interval(bias + limitFactor * sd, limitHalfWidth),
  };
}
