/**
 * The middle of a sorted list; the mean of the two middle values where their number is even.
 *
 * @param sorted ascending, at least one value
 * @throws RangeError for an empty list
 * @example medianOfSorted([1, 2, 10]) // 2
 */
export function medianOfSorted(sorted: ArrayLike<number>): number {
  if (sorted.length === 0) throw new RangeError('medianOfSorted: at least one value is needed, received none');
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}
