/**
 * How much smaller an area is than it was, in percent.
 *
 * @param before area at the start or at the peak, > 0, mm²
 * @param after area now, ≥ 0, mm²
 * @returns percent; negative where it grew
 * @throws RangeError where there was no area to begin with
 * Source: the definition of Sheehan et al. 2003, Diabetes Care 26:1879–82.
 * @example percentAreaReduction(36, 24) // 33.3333
 */
export function percentAreaReduction(before: number, after: number): number {
  if (!(before > 0)) throw new RangeError(`percentAreaReduction: an area above 0 is needed to begin with, received ${before}`);
  return (100 * (before - after)) / before;
}
