import { HOURS_PER_DAY } from '../care/instant';
import type { LimitId } from './constants';
import type { Course, Entry } from './course';

/**
 * The moments at which something can become known: what came in, a visit that closes, a day that passes, a silence that
 * grows too long. The same course has the same moments whenever it is judged; a later now only adds some.
 *
 * @param course the prepared episode
 * @param groups its visits
 * @param limits of the rule book
 * @returns hours after the procedure, ascending, each once, none later than now
 * @example listMoments(course, groups, limits)[0] // 0
 */
export function listMoments(course: Course, groups: readonly Entry[][], limits: Readonly<Record<LimitId, number>>): number[] {
  const { entries, episode, nowHours } = course;
  const { plan, procedure } = episode;
  const silenceHours = plan.checkInEveryHours + plan.graceHours;
  const silentDues = [0, ...entries.map(({ hours }) => hours)].flatMap((hours, place) => {
    const next = entries[place]?.hours ?? Infinity;
    return next > hours + silenceHours ? [hours + silenceHours] : [];
  });
  const all = [
    0,
    ...entries.flatMap(({ hours, photo }) => (photo ? [hours, photo.knownHours] : [hours])),
    ...groups.map(([first]) => first.hours + limits['visit.hours']),
    ...silentDues,
    limits[`slow.${procedure.matricectomy}`] * HOURS_PER_DAY,
    limits[`late.${procedure.matricectomy}`] * HOURS_PER_DAY,
  ];
  return [...new Set(all.filter((hours) => hours <= nowHours))].sort((a, b) => a - b);
}
