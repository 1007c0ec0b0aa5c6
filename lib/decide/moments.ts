import { HOURS_PER_DAY } from '../care/instant';
import type { LimitId } from './constants';
import type { Course, Entry } from './course';

export interface Moment {
  readonly hours: number;
  /** Something came in. At other moments only time has passed, and rules about photos and answers say what they said. */
  readonly hasNews: boolean;
}

/**
 * The moments at which something can become known: what came in, a visit that closes, a day that passes, a silence that
 * grows too long. The same course has the same moments whenever it is judged; a later now only adds some.
 *
 * @param course the prepared episode
 * @param groups its visits
 * @param limits of the rule book
 * @returns hours after the procedure, ascending, each once, none later than now
 * @example listMoments(course, groups, limits)[0].hours // 0
 */
export function listMoments(course: Course, groups: readonly Entry[][], limits: Readonly<Record<LimitId, number>>): Moment[] {
  const { entries, episode, nowHours } = course;
  const { plan, procedure } = episode;
  const silenceHours = plan.checkInEveryHours + plan.graceHours;
  const silentDues = [0, ...entries.map(({ hours }) => hours)].flatMap((hours, place) => {
    const next = entries[place]?.hours ?? Infinity;
    return next > hours + silenceHours ? [hours + silenceHours] : [];
  });
  const news = new Set([0, ...entries.flatMap(({ hours, photo }) => (photo ? [hours, photo.knownHours] : [hours]))]);
  const passed = [
    ...groups.map(([first]) => first.hours + limits['visit.hours']),
    ...silentDues,
    limits[`slow.${procedure.matricectomy}`] * HOURS_PER_DAY,
    limits[`late.${procedure.matricectomy}`] * HOURS_PER_DAY,
  ];
  return [...new Set([...news, ...passed])]
    .filter((hours) => hours <= nowHours)
    .sort((a, b) => a - b)
    .map((hours) => ({ hours, hasNews: news.has(hours) }));
}
