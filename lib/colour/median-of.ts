import { median } from 'd3-array';

/**
 * The median; the mean of the two middle values where the count is even.
 * @param values any finite numbers, in any order; not changed
 * @returns the median; NaN for an empty list
 * @example medianOf([3, 1, 2]) // 2
 */
export const medianOf = (values: Iterable<number>): number => median(values) ?? NaN;
