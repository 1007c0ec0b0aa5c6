import type { View } from './view';
import { visitValueOfReach, type VisitValue } from './visit-value';

/**
 * The newest reach, as long as it still speaks for the newest visit.
 *
 * @param view the moment
 * @returns null where no visit of the last day and a half has one
 * @example newestReach(view)?.value // 6.2
 */
export function newestReach({ visits, limits }: View): VisitValue | null {
  const newest = visits.at(-1);
  for (let at = visits.length - 1; at >= 0 && newest; at--) {
    if (newest.startHours - visits[at].startHours > limits['fresh.hours']) return null;
    const reach = visitValueOfReach(visits[at]);
    if (reach) return reach;
  }
  return null;
}
