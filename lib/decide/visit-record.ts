import type { Entry } from './course';
import { type Visit, visitsAsOf } from './visits';

/**
 * The visits of a course as time goes on. One that is closed and wholly known changes no more and is made once.
 *
 * @example new VisitRecord([], 6).at(24) // []
 */
export class VisitRecord {
  private readonly settled: Visit[] = [];

  constructor(
    private readonly groups: readonly (readonly Entry[])[],
    private readonly visitHours: number,
  ) {}

  /** What was known at a moment, oldest first. Moments are asked for in their order. */
  at(hours: number): Visit[] {
    const visits = [...this.settled];
    for (let place = visits.length; place < this.groups.length && this.groups[place][0].hours <= hours; place++) {
      const visit = visitsAsOf(this.groups[place], this.visitHours, hours);
      // A photo that is still on its way keeps its visit open to change, and those after it too.
      if (this.settled.length === place && visit.closed && this.groups[place].every(({ photo }) => photo === null || photo.knownHours <= hours)) this.settled.push(visit);
      visits.push(visit);
    }
    return visits;
  }
}
