import type { Level } from './finding';

const ORDER: readonly Level[] = ['retake', 'visit', 'soon', 'today', 'now'];

/** Only rules about symptoms may reach `now`; measurements and administration stop at `today`. */
export type RuleKind = 'symptom' | 'measurement' | 'administrative';

/**
 * Rank of a level, for comparing.
 * @example levelRank('now') // 4
 */
export const levelRank = (level: Level): number => ORDER.indexOf(level);

/**
 * A level one step up for a foot at risk, held to what the kind of rule may say.
 *
 * @param level as the rule gives it
 * @param kind of the rule
 * @returns the next level; `retake` is no place in the queue and stays
 * @example raiseLevel('today', 'measurement') // 'today'
 */
export function raiseLevel(level: Level, kind: RuleKind): Level {
  if (level === 'retake') return level;
  const highest: Level = kind === 'symptom' ? 'now' : 'today';
  const raised = ORDER[Math.min(levelRank(level) + 1, ORDER.length - 1)];
  return levelRank(raised) > levelRank(highest) ? highest : raised;
}
