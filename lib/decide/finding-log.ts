import type { Resolution } from '../care/episode';
import { hoursBetweenInstants } from '../care/instant';
import { compareExceeds } from './compare';
import type { Course } from './course';
import type { Closing, Finding, Level, Raised, RuleId } from './finding';
import { levelRank, raiseLevel } from './raise-level';
import type { Rule, View } from './view';
import type { Visit } from './visits';

interface Kept {
  readonly hours: number;
  readonly finding: Finding;
}

/**
 * Findings as they come and go. It only ever adds: a higher level is a further finding, and a closed one stays with its
 * reason.
 *
 * @example new FindingLog(course, '2026.3').findings() // []
 */
export class FindingLog {
  private kept: Kept[] = [];
  private readonly waiting: { readonly resolution: Resolution; readonly hours: number }[];
  /** Hours up to which a person has settled a rule: older evidence raises it no more. */
  private readonly settled = new Map<string, number>();
  private dryHours: number | null = null;
  private dryConfirmed = false;

  constructor(
    private readonly course: Course,
    private readonly version: string,
  ) {
    this.waiting = course.episode.resolutions
      .map((resolution) => ({ resolution, hours: hoursBetweenInstants(course.episode.procedure.at, resolution.at) }))
      .filter(({ hours }) => hours <= course.nowHours)
      .sort((a, b) => a.hours - b.hours);
  }

  state(): Pick<View, 'open' | 'dryHours' | 'dryConfirmed'> {
    const open = this.kept.filter(({ finding }) => finding.closed === null).map(({ finding }) => finding);
    return { open, dryHours: this.dryHours, dryConfirmed: this.dryConfirmed };
  }

  /** A person's words from before this moment, and the end of the case. */
  resolveBefore(hours: number): void {
    while (this.waiting.length > 0 && this.waiting[0].hours < hours) {
      const [{ resolution, hours: at }] = this.waiting.splice(0, 1);
      this.settled.set(resolution.rule, at);
      this.close(resolution.rule, at, { at: this.course.timeOf(at), by: resolution.by, reason: resolution.reason });
      if (resolution.rule === 'dry') this.hearOfDryness(resolution);
    }
    const { closedHours, nowHours } = this.course;
    if (closedHours >= hours || closedHours > nowHours) return;
    const closing = { at: this.course.timeOf(closedHours), by: 'the case', reason: 'The case was closed.' };
    for (const { finding } of [...this.kept]) this.close(finding.rule, closedHours, closing);
  }

  private hearOfDryness({ outcome }: Resolution): void {
    if (this.dryHours === null) return;
    if (outcome === 'dismissed') this.dryHours = null;
    else this.dryConfirmed = true;
  }

  /** Whoever sends something is silent no longer. */
  hear(newest: Visit | undefined): void {
    const hours = newest?.entries.at(-1)?.hours ?? -1;
    const silent = this.kept.find(({ finding, hours: at }) => finding.rule === 'silent' && finding.closed === null && at < hours);
    if (silent) this.close('silent', hours, { at: this.course.timeOf(hours), by: 'silent', reason: 'A check-in came.' });
  }

  /** Is this rule open at the highest level it can give? Then whatever it says is said. */
  isExhausted(rule: Rule): boolean {
    return this.isOpenAt(rule, rule.highest);
  }

  private isOpenAt(rule: Rule, level: Level): boolean {
    const meant = this.levelOf(rule, level);
    return this.kept.some(({ finding }) => finding.rule === rule.id && finding.closed === null && levelRank(finding.level) >= levelRank(meant));
  }

  private levelOf(rule: Rule, level: Level): Level {
    return this.course.atRisk && !rule.ownRiskLevel ? raiseLevel(level, rule.kind) : level;
  }

  /** Adds a finding where none of this rule is open at its level or above, and its evidence is newer than a person's word. Was it added? */
  raise(rule: Rule, raised: Raised | null, hours: number): boolean {
    if (raised === null || !compareExceeds(raised.knownHours, this.settled.get(rule.id) ?? -1)) return false;
    if (this.isOpenAt(rule, raised.level)) return false;
    const level = this.levelOf(rule, raised.level);
    const { numbers, photos, checkIns, sentence } = raised;
    this.kept.push({
      hours,
      finding: {
        rule: rule.id,
        level,
        at: this.course.timeOf(hours),
        sentence,
        evidence: { numbers, photos, checkIns },
        ruleBookVersion: this.version,
        raisedForRisk: level !== raised.level,
        closed: null,
      },
    });
    if (rule.id === 'dry') this.dryHours = hours;
    if (raised.endsDryness) this.endDryness(hours, rule.id);
    return true;
  }

  private endDryness(hours: number, by: RuleId): void {
    this.close('dry', hours, { at: this.course.timeOf(hours), by, reason: 'It is no longer dry.' });
    this.dryHours = null;
    this.dryConfirmed = false;
  }

  private close(rule: string | RuleId, hours: number, closed: Closing): void {
    this.kept = this.kept.map((one) =>
      one.finding.rule === rule && one.finding.closed === null && one.hours <= hours ? { ...one, finding: { ...one.finding, closed } } : one,
    );
  }

  findings(): Finding[] {
    return this.kept.map(({ finding }) => finding);
  }
}
