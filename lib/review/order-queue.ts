import { hoursBetweenInstants } from '../care/instant';
import type { Level } from '../decide/finding';
import { LEVEL_WORDS, PHOTO_NOT_MEASURED, type ReviewRule } from './constants';

/** One open finding as the list needs it. */
export interface OpenFinding {
  readonly id: string;
  readonly episodeId: string;
  readonly rule: ReviewRule;
  readonly level: Level;
  /** ISO 8601, UTC: the moment from which it could be known. */
  readonly at: string;
  /** ISO 8601, UTC: when it came onto the list. */
  readonly foundAt: string;
}

/** One case with all that is open on it. */
export interface QueuedCase {
  readonly episodeId: string;
  /** The one that gives the case its place: the worst, and of those the one that has used up most of its limit. */
  readonly first: OpenFinding;
  readonly others: readonly OpenFinding[];
  readonly waitedMinutes: number;
  /** The clinic's own limit for this level; null where it has set none. */
  readonly limitMinutes: number | null;
  /** A clinician has been asked about all that is open, and has not answered yet. */
  readonly asked: boolean;
}

export interface QueueFacts {
  /** Minutes by level, as the clinic has set them. */
  readonly limits: Readonly<Partial<Record<Level, number>>>;
  /** ISO 8601 */
  readonly now: string;
  /** When a clinician was asked, by episode; ISO 8601. What was found later nobody has asked about. */
  readonly askedAt: ReadonlyMap<string, string>;
  /** Whoever answers questions finds those cases first; whoever asked finds them last. */
  readonly answersQuestions: boolean;
}

const MINUTES_PER_HOUR = 60;
const RANK = Object.keys(LEVEL_WORDS) as Level[];

/**
 * Puts open findings together into cases, and cases into one order: worst level first, then by the share of the
 * clinic's limit that has been used up. Of one rule at one level a case has one finding, the newest.
 *
 * @param findings all that are open, in any order
 * @param facts the clinic's limits, the moment, which cases wait for a clinician, and who is reading
 * @returns one entry per episode; the same findings give the same order, whatever order they came in
 * @example orderQueue([], { limits: {}, now: '2026-03-02T09:00:00Z', askedAt: new Map(), answersQuestions: false }) // []
 */
export function orderQueue(findings: readonly OpenFinding[], facts: QueueFacts): QueuedCase[] {
  const byEpisode = new Map<string, OpenFinding[]>();
  for (const finding of findings) byEpisode.set(finding.episodeId, [...(byEpisode.get(finding.episodeId) ?? []), finding]);
  const cases = [...byEpisode].map(([episodeId, own]) => queuedCase(episodeId, onePerRule(own), facts));
  return cases.sort(
    (a, b) =>
      placeOfAsked(a, facts) - placeOfAsked(b, facts) ||
      rankOf(a.first) - rankOf(b.first) ||
      shareUsed(b) - shareUsed(a) ||
      (a.episodeId < b.episodeId ? -1 : 1),
  );
}

/**
 * What is open on one case, as its page tells it: each reason once, worst first and then oldest first.
 *
 * @param findings of one episode, in any order
 * @example orderFindings([]) // []
 */
export const orderFindings = (findings: readonly OpenFinding[]): OpenFinding[] =>
  onePerRule(findings).sort((a, b) => rankOf(a) - rankOf(b) || (a.at < b.at || (a.at === b.at && a.id < b.id) ? -1 : 1));

const rankOf = ({ level }: OpenFinding): number => RANK.indexOf(level);

/** An emergency keeps its place, asked or not. */
const placeOfAsked = ({ asked, first }: QueuedCase, { answersQuestions }: QueueFacts): number => (first.level === 'now' ? 0 : asked === answersQuestions ? 1 : 2);

/** Without a limit of its own a level is ordered by minutes, behind every case of that level that has one. */
const shareUsed = ({ waitedMinutes, limitMinutes }: QueuedCase): number =>
  limitMinutes === null ? -1 / (1 + Math.max(0, waitedMinutes)) : waitedMinutes / limitMinutes;

/**
 * A rule that said the same again is one reason: told with its newest evidence, waiting since it was first said. A photo that cannot be measured is none
 * beside "cannot judge".
 */
function onePerRule(findings: readonly OpenFinding[]): OpenFinding[] {
  const kept = new Map<string, OpenFinding>();
  const judged = findings.some(({ rule }) => rule === 'cannot-judge');
  for (const finding of [...findings].sort((a, b) => (a.at < b.at || (a.at === b.at && a.id < b.id) ? -1 : 1))) {
    if (judged && finding.rule === PHOTO_NOT_MEASURED) continue;
    const key = finding.rule === 'cannot-judge' ? finding.id : `${finding.rule} ${finding.level}`;
    kept.set(key, { ...finding, at: kept.get(key)?.at ?? finding.at });
  }
  return [...kept.values()];
}

function queuedCase(episodeId: string, findings: readonly OpenFinding[], { limits, now, askedAt }: QueueFacts): QueuedCase {
  const waited = ({ at }: OpenFinding) => Math.max(0, hoursBetweenInstants(at, now) * MINUTES_PER_HOUR);
  const [first, ...others] = [...findings].sort((a, b) => rankOf(a) - rankOf(b) || waited(b) - waited(a) || (a.id < b.id ? -1 : 1));
  const limit = limits[first.level];
  const asked = findings.every(({ foundAt }) => Date.parse(foundAt) <= Date.parse(askedAt.get(episodeId) ?? ''));
  return { episodeId, first, others, waitedMinutes: waited(first), limitMinutes: limit !== undefined && limit > 0 ? limit : null, asked };
}
