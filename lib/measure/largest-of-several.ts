/** Mean and variance of the largest of n independent standard normal values, n = 1 … 10. Source: Harter 1961,
 * Biometrika 48:151–65 (means); Sarhan and Greenberg 1956 (variances). Checked by simulation in the tests. */
const MEAN = [0, 0.56419, 0.84628, 1.02938, 1.16296, 1.26721, 1.35218, 1.4236, 1.48501, 1.53875];
const VARIANCE = [1, 0.68169, 0.55947, 0.49172, 0.44753, 0.41593, 0.39192, 0.3729, 0.35735, 0.34434];

function interpolate(table: readonly number[], several: number): number {
  const below = Math.floor(several) - 1;
  const above = Math.min(below + 1, table.length - 1);
  return table[below] + (several - Math.floor(several)) * (table[above] - table[below]);
}

/**
 * What happens to a maximum over several places that err independently: it comes out too high, and varies less than one.
 *
 * @param several number of places, ≥ 1, may be fractional; more than ten are taken as ten
 * @returns mean and standard deviation in units of the standard deviation of one place
 * @throws RangeError below 1
 * @example largestOfSeveral(1).sd // 1
 */
export function largestOfSeveral(several: number): { readonly mean: number; readonly sd: number } {
  if (!(several >= 1)) throw new RangeError(`largestOfSeveral: several must be ≥ 1, received ${several}`);
  const bounded = Math.min(several, MEAN.length);
  return { mean: interpolate(MEAN, bounded), sd: Math.sqrt(interpolate(VARIANCE, bounded)) };
}
