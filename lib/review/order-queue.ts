import { hoursBetweenInstants } from '../care/instant';
import type { Level } from '../decide/finding';
import { type OpenFinding, placeCase, type PlacedCase, rankOfLevel } from './place-case';

/** One case with all that is open on it, at one moment. */
export interface QueuedCase extends PlacedCase {
  readonly episodeId: string;
  readonly waitedMinutes: number;
  /** The clinic's own limit for this level; null where it has set none. */
  readonly limitMinutes: number | null;
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

/**
 * Puts open findings together into cases, and cases into one order: worst level first, then by the share of the
 * clinic's limit that has been used up, which is the longest wait, for all of a level have one limit. Of one rule at one
 * level a case has one finding, the newest.
 *
 * @param findings all that are open, in any order
 * @param facts the clinic's limits, the moment, which cases wait for a clinician, and who is reading
 * @returns one entry per episode; the same findings give the same order, whatever order they came in
 * @example orderQueue([], { limits: {}, now: '2026-03-02T09:00:00Z', askedAt: new Map(), answersQuestions: false }) // []
 */
export function orderQueue(findings: readonly OpenFinding[], facts: QueueFacts): QueuedCase[] {
  const byEpisode = new Map<string, OpenFinding[]>();
  for (const finding of findings) {
    const own = byEpisode.get(finding.episodeId);
    if (own) own.push(finding);
    else byEpisode.set(finding.episodeId, [finding]);
  }
  const cases = [...byEpisode].flatMap(([episodeId, own]) => queuedCase(episodeId, own, facts));
  return cases.sort(
    (a, b) =>
      placeOfAsked(a, facts) - placeOfAsked(b, facts) ||
      rankOfLevel(a.first.level) - rankOfLevel(b.first.level) ||
      Date.parse(a.first.at) - Date.parse(b.first.at) ||
      (a.episodeId < b.episodeId ? -1 : 1),
  );
}

/** An emergency keeps its place, asked or not. */
const placeOfAsked = ({ asked, first }: QueuedCase, { answersQuestions }: QueueFacts): number => (first.level === 'now' ? 0 : asked === answersQuestions ? 1 : 2);

function queuedCase(episodeId: string, findings: readonly OpenFinding[], { limits, now, askedAt }: QueueFacts): QueuedCase[] {
  const placed = placeCase(findings, askedAt.get(episodeId) ?? null);
  if (placed === null) return [];
  const limit = limits[placed.first.level];
  const waitedMinutes = Math.max(0, hoursBetweenInstants(placed.first.at, now) * MINUTES_PER_HOUR);
  return [{ episodeId, ...placed, waitedMinutes, limitMinutes: limit !== undefined && limit > 0 ? limit : null }];
}
