/**
 * Rate at which an area shrinks if it shrinks by the same share every day.
 *
 * @param before area at the start, > 0
 * @param after area later, > 0: at zero the rate is not defined and nothing is made up
 * @param elapsedDays > 0
 * @returns k per day, or null where an area is zero
 * Source: k = ln(A₀/A) / t, letter to Wounds, July 2003.
 * @example exponentialDecay(100, 60, 7) // 0.0729751
 */
export function exponentialDecay(before: number, after: number, elapsedDays: number): number | null {
  if (!(elapsedDays > 0)) throw new RangeError(`exponentialDecay: days above 0 are needed, received ${elapsedDays}`);
  return before > 0 && after > 0 ? Math.log(before / after) / elapsedDays : null;
}
