import type { Episode } from '../care/episode';
import { ALL_RULES } from './all-rules';
import { prepareCourse } from './course';
import type { Finding } from './finding';
import { FindingLog } from './finding-log';
import { listMoments } from './moments';
import type { RuleBook } from './rule-book';
import type { View } from './view';
import { groupVisits } from './visits';
import { VisitRecord } from './visit-record';

/**
 * Judges a course as it unfolded: at every moment, every rule sees what was known then and nothing later. So a finding
 * that was raised stays raised, whatever comes after, until a person or a rule that says so closes it.
 *
 * @param episode as parsed; the order of its check-ins and the zones of its times do not matter
 * @param book limits and their version
 * @returns every finding ever raised, oldest first; closed ones say by whom and why
 * @example evaluate(episode, DEFAULT_RULE_BOOK)[0].rule // 'purulent'
 */
export function evaluate(episode: Episode, { limits, version }: RuleBook): Finding[] {
  const course = prepareCourse(episode);
  const groups = groupVisits(course.entries, limits['visit.hours']);
  const record = new VisitRecord(groups, limits['visit.hours']);
  const log = new FindingLog(course, version);
  for (const { hours, hasNews } of listMoments(course, groups, limits)) {
    log.resolveBefore(hours);
    const visits = record.at(hours);
    log.hear(visits.at(-1));
    let view: View = { hours, course, limits, visits, ...log.state() };
    for (const rule of ALL_RULES) {
      if ((!hasNews && rule.kind !== 'administrative') || log.isExhausted(rule)) continue;
      if (hours > course.closedHours && rule.kind !== 'symptom') continue;
      if (log.raise(rule, rule.judge(view), hours)) view = { ...view, ...log.state() };
    }
  }
  log.resolveBefore(Infinity);
  return log.findings();
}
