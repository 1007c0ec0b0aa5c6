import { parseEpisode } from '../care/parse-episode';
import { changeRuleBook, DEFAULT_RULE_BOOK, type RuleBook } from '../decide/rule-book';
import type { RuleRows } from '../edges/db/read-rule-rows';
import { type Assessment, assessEpisode } from '../pipeline/assess-episode';
import { episodeJson } from './episode-json';

/** What the rules say of an episode at one moment, by its clinic's rule book. */
export function assessRows(rows: RuleRows, at: Date): Assessment {
  const parsed = parseEpisode(episodeJson(rows, at.toISOString()));
  if ('problem' in parsed) throw new Error(`Episode ${rows.id} cannot be judged. ${parsed.problem}`);
  return assessEpisode(parsed.episode, ruleBookOf(rows));
}

/** The limits that are in force at the clinic of an episode. */
export function ruleBookOf({ clinic }: RuleRows): RuleBook {
  const [newest] = clinic.ruleBooks;
  if (newest === undefined) return DEFAULT_RULE_BOOK;
  const changed = changeRuleBook(JSON.parse(newest.limits) as Record<string, number>);
  if ('problem' in changed) throw new Error(`Rule book ${newest.number} of clinic ${clinic.id} cannot be used: ${changed.problem}`);
  return changed.book;
}
