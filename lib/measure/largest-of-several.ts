import { LARGEST_MEAN, LARGEST_VARIANCE } from './constants';

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
 * Source: Harter 1961, Biometrika 48:151–65 (means); Sarhan and Greenberg 1956 (variances); the values from memory.
 * @example largestOfSeveral(2).mean // 0.5642
 */
export function largestOfSeveral(several: number): { readonly mean: number; readonly sd: number } {
  if (!(several >= 1)) throw new RangeError(`largestOfSeveral: several must be ≥ 1, received ${several}`);
  const bounded = Math.min(several, LARGEST_MEAN.length);
  return { mean: interpolate(LARGEST_MEAN, bounded), sd: Math.sqrt(interpolate(LARGEST_VARIANCE, bounded)) };
}
