import type { TreatedSide } from '../segment/segmentation';
import type { EarlierVisit } from './earlier-visit';

/**
 * The side that most earlier visits agree on.
 *
 * @param earlier visits of the same toe
 * @returns null where they are even, or there are none
 * @example sideOfVisits([]) // null
 */
export function sideOfVisits(earlier: readonly Pick<EarlierVisit, 'treatedSide'>[]): TreatedSide | null {
  const balance = earlier.reduce((sum, { treatedSide }) => sum + (treatedSide === 'left' ? 1 : treatedSide === 'right' ? -1 : 0), 0);
  return balance === 0 ? null : balance > 0 ? 'left' : 'right';
}
