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

/** One case by what is open on it, at whatever moment it is looked at. */
export interface PlacedCase {
  /** The one that gives the case its place: the worst, and of those the one that has waited longest. */
  readonly first: OpenFinding;
  readonly others: readonly OpenFinding[];
  /** A clinician has been asked about all that is open, and has not answered yet. */
  readonly asked: boolean;
}

const RANK = Object.keys(LEVEL_WORDS) as Level[];

/**
 * The place of a level in the list.
 *
 * @param level of a finding
 * @returns 0 for the worst
 * @example rankOfLevel('now') // 0
 */
export const rankOfLevel = (level: Level): number => RANK.indexOf(level);

/**
 * Puts the open findings of one case together.
 *
 * @param findings of one episode, in any order
 * @param askedAt when a clinician was asked, ISO 8601; null where nobody did
 * @returns null where nothing is open
 * @example placeCase([], null) // null
 */
export function placeCase(findings: readonly OpenFinding[], askedAt: string | null): PlacedCase | null {
  const [first, ...others] = onePerRule(findings).sort((a, b) => rankOfLevel(a.level) - rankOfLevel(b.level) || olderFirst(a, b));
  if (first === undefined) return null;
  const asked = [first, ...others].every(({ foundAt }) => Date.parse(foundAt) <= Date.parse(askedAt ?? ''));
  return { first, others, asked };
}

/**
 * What is open on one case, as its page tells it: each reason once, worst first and then oldest first.
 *
 * @param findings of one episode, in any order
 * @example orderFindings([]) // []
 */
export function orderFindings(findings: readonly OpenFinding[]): OpenFinding[] {
  const placed = placeCase(findings, null);
  return placed ? [placed.first, ...placed.others] : [];
}

const olderFirst = (a: OpenFinding, b: OpenFinding): number => Date.parse(a.at) - Date.parse(b.at) || (a.id < b.id ? -1 : 1);

/**
 * A rule that said the same again is one reason: told with its newest evidence, waiting since it was first said. A photo that cannot be measured is none
 * beside "cannot judge".
 */
function onePerRule(findings: readonly OpenFinding[]): OpenFinding[] {
  const kept = new Map<string, OpenFinding>();
  const judged = findings.some(({ rule }) => rule === 'cannot-judge');
  for (const finding of [...findings].sort(olderFirst)) {
    if (judged && finding.rule === PHOTO_NOT_MEASURED) continue;
    const key = finding.rule === 'cannot-judge' ? finding.id : `${finding.rule} ${finding.level}`;
    kept.set(key, { ...finding, at: kept.get(key)?.at ?? finding.at });
  }
  return [...kept.values()];
}
