/**
 * How many values share each of the values that occur more than once.
 *
 * @param values any order
 * @returns sizes of the groups of equal values, 2 or more each, smallest value first
 * @example tieSizes([10, 10, 5, 15, 15, 10]) // [3, 2]
 */
export function tieSizes(values: readonly number[]): number[] {
  const sorted = Float64Array.from(values).sort();
  const sizes: number[] = [];
  for (let from = 0, to = 0; from < sorted.length; from = to) {
    while (to < sorted.length && sorted[to] === sorted[from]) to++;
    if (to - from > 1) sizes.push(to - from);
  }
  return sizes;
}
