import { visitValue, type VisitValue } from './visit-value';
import type { Visit } from './visits';

const projected = (visit: Visit): VisitValue | null => visitValue(visit, 'reach');
const unrolled = (visit: Visit): VisitValue | null => visitValue(visit, 'unrolledReach');

/**
 * One kind of reach for visits that are compared with each other: a change from a projected to an unrolled reach would look like
 * growth, and the way back like healing.
 *
 * @param visits all that may be compared, oldest first
 * @returns how to read a visit: its unrolled reach where every visit with a reach has one, else its projected one. Where the
 *   newest has only an unrolled one, that
 * @example likeReach(view.visits)(view.visits[0])?.value // 4.2
 */
export function likeReach(visits: readonly Visit[]): (visit: Visit) => VisitValue | null {
  const newest = [...visits].reverse().find((visit) => projected(visit) !== null || unrolled(visit) !== null);
  const isUnrolledThroughout = visits.every((visit) => unrolled(visit) !== null || projected(visit) === null);
  return isUnrolledThroughout || (newest && projected(newest) === null) ? unrolled : projected;
}
