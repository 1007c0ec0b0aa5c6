/**
 * The median; the mean of the two middle values where the count is even.
 * @param values any finite numbers, in any order; not changed
 * @returns the median; NaN for an empty list
 * @example medianOf([3, 1, 2]) // 2
 */
export function medianOf(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  if (sorted.length === 0) return NaN;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
