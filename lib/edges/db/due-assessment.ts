import { renewOpenCase } from './open-case';
import type { Database } from './open-database';
import { readRuleRows, type RuleRows } from './read-rule-rows';
import { type AssessmentWords, storeAssessment } from './store-assessment';

/** A photo that has come and not been worked on is neither usable nor unusable yet: the rules wait for it. */
const ALL_WORKED_ON = { none: { job: { is: { state: { in: ['waiting', 'running'] } } } } };

/** The episode whose rules have been waiting longest to be asked; null where none is due. */
export async function dueAssessment(database: Database, now: Date): Promise<RuleRows | null> {
  const where = { assessAt: { lte: now }, photos: ALL_WORKED_ON };
  const due = await database.episode.findFirst({ where, orderBy: { assessAt: 'asc' }, select: { id: true } });
  return due && readRuleRows(database, due.id);
}

/** Keeps it, and says when to ask next. Where something came meanwhile the episode stays due. Null: the rules failed. */
export async function keepDueAssessment(
  database: Database,
  { id, assessAt }: RuleRows,
  words: AssessmentWords | null,
  { now, next }: { now: Date; next: Date },
): Promise<void> {
  await database.$transaction(async (queries) => {
    if (words) await storeAssessment(queries, id, words, now);
    await renewOpenCase(queries, id, now);
    await queries.episode.updateMany({ where: { id, assessAt }, data: { assessAt: next } });
  });
}
