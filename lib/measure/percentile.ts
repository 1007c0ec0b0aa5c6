/**
 * A percentile with straight-line interpolation between order statistics.
 *
 * @param values at least one number
 * @param share 0…1, e.g. 0.95
 * @returns the percentile, in the unit of the values
 * @throws RangeError for no values or a share outside 0…1
 * Source: Hyndman and Fan 1996, definition 7.
 * @example percentile([1, 2, 3, 4, 5], 0.5) // 3
 */
export function percentile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new RangeError('percentile: at least one value is needed, received 0');
  if (!(share >= 0 && share <= 1)) throw new RangeError(`percentile: share must be 0…1, received ${share}`);
  const sorted = [...values].sort((a, b) => a - b);
  const position = share * (sorted.length - 1);
  const below = Math.floor(position);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
}
