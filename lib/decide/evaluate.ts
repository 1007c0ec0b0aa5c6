import type { Episode } from '../care/episode';
import { ALL_RULES } from './all-rules';
import { type Entry, prepareCourse } from './course';
import type { Finding } from './finding';
import { FindingLog } from './finding-log';
import { listMoments } from './moments';
import type { RuleBook } from './rule-book';
import { groupVisits, type Visit, visitsAsOf } from './visits';

/**
 * Judges a course as it unfolded: at every moment, every rule sees what was known then and nothing later. So a finding
 * that was raised stays raised, whatever comes after, until a person or a rule that says so closes it.
 *
 * @param episode as parsed; the order of its check-ins and the zones of its times do not matter
 * @param book limits and their version
 * @returns every finding ever raised, oldest first; closed ones say by whom and why
 * @example evaluate(episode, DEFAULT_RULE_BOOK)[0].rule // 'purulent'
 */
export function evaluate(episode: Episode, book: RuleBook): Finding[] {
  const course = prepareCourse(episode);
  const visitHours = book.limits['visit.hours'];
  const groups = groupVisits(course.entries, visitHours);
  const log = new FindingLog(course, book.version);
  const settled: (Visit | undefined)[] = [];
  for (const hours of listMoments(course, groups, book.limits)) {
    log.resolveBefore(hours);
    const visits = groups.flatMap((group, place) => (group[0].hours <= hours ? [knownVisit(settled, place, group, visitHours, hours)] : []));
    log.hear(visits.at(-1));
    for (const rule of ALL_RULES) {
      if (hours > course.closedHours && rule.kind !== 'symptom') continue;
      log.raise(rule, rule.judge({ hours, course, limits: book.limits, visits, ...log.state() }), hours);
    }
  }
  log.resolveBefore(Infinity);
  return log.findings();
}

/** A visit that is closed and wholly known changes no more and is made once. */
function knownVisit(settled: (Visit | undefined)[], place: number, group: readonly Entry[], visitHours: number, hours: number): Visit {
  const known = settled[place];
  if (known) return known;
  const visit = visitsAsOf(group, visitHours, hours);
  const all = group.every((entry) => entry.hours <= hours && (entry.photo === null || entry.photo.knownHours <= hours));
  if (visit.closed && all) settled[place] = visit;
  return visit;
}
