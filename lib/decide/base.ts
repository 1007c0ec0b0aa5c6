import { MEDIAN_OF } from './constants';
import type { VisitValue } from './visit-value';

/** What stands for the toe before it grew: which value, and what to call it in the evidence. */
export interface Base {
  readonly value: VisitValue;
  readonly name: 'lowestRunningMedian' | 'meanOfTwo' | 'higherOfTwo' | 'onlyVisit';
}

/**
 * What a length is compared with: the lowest running median of three visits; of two their mean, for neither can be told
 * to be wild; the only one where there is no other.
 *
 * @param candidates visits that may be compared with, oldest first
 * @returns null where there is none. A mean has the mean of both u, as if both erred alike, and the time of the later
 * @example baseOfLength([first, second])?.name // 'meanOfTwo'
 */
export function baseOfLength(candidates: readonly VisitValue[]): Base | null {
  if (candidates.length !== 2) return carefulBase(candidates);
  const [earlier, later] = candidates;
  const value = { value: (earlier.value + later.value) / 2, u: (earlier.u + later.u) / 2, lowestOfSeveral: null, visit: later.visit, photos: [...earlier.photos, ...later.photos] };
  return { value, name: 'meanOfTwo' };
}

/**
 * The same where less can be trusted, as with areas and with photos of the first days: the higher of two.
 *
 * @param candidates visits that may be compared with, oldest first
 * @example carefulBase([{ value: 3 }, { value: 4 }])?.value.value // 4
 */
export const carefulBase = (candidates: readonly VisitValue[]): Base | null => (candidates.length < MEDIAN_OF ? onlyOrHigher(candidates) : lowestRunningMedian(candidates));

function onlyOrHigher(candidates: readonly VisitValue[]): Base | null {
  const [first, second] = candidates as readonly (VisitValue | undefined)[];
  if (first === undefined) return null;
  if (second === undefined) return { value: first, name: 'onlyVisit' };
  return { value: second.value > first.value ? second : first, name: 'higherOfTwo' };
}

/** The visit that is the median of its three, of the three with the lowest. */
function lowestRunningMedian(candidates: readonly VisitValue[]): Base {
  let lowest = middleOf(candidates[0], candidates[1], candidates[2]);
  for (let at = MEDIAN_OF; at < candidates.length; at++) {
    const middle = middleOf(candidates[at - 2], candidates[at - 1], candidates[at]);
    if (middle.value < lowest.value) lowest = middle;
  }
  return { value: lowest, name: 'lowestRunningMedian' };
}

function middleOf(a: VisitValue, b: VisitValue, c: VisitValue): VisitValue {
  const [low, high] = a.value <= b.value ? [a, b] : [b, a];
  if (c.value <= low.value) return low;
  return c.value >= high.value ? high : c;
}
