import { ROUNDING } from './constants';

/**
 * Is a value at a limit or beyond it?
 * @example compareReaches(0.1 + 0.2, 0.3) // true
 */
export const compareReaches = (value: number, limit: number): boolean => value >= limit - ROUNDING;

/**
 * Is a value beyond a limit and not just at it?
 * @example compareExceeds(0.1 + 0.2, 0.3) // false
 */
export const compareExceeds = (value: number, limit: number): boolean => value > limit + ROUNDING;
