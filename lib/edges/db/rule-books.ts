import type { OwnLimits } from '../../decide/limits-schema';
import { newId } from './new-id';
import type { Queries } from './open-database';

export interface RuleBookRow {
  readonly number: number;
  readonly limits: OwnLimits;
  readonly sources: Readonly<Record<string, string>>;
  readonly madeBy: string;
  readonly reason: string;
  readonly madeAt: Date;
}

/** Every version of a clinic's rule book, newest first; empty where the defaults have never been changed. */
export async function ruleBooksOf(queries: Queries, clinicId: string): Promise<RuleBookRow[]> {
  const rows = await queries.ruleBookVersion.findMany({ where: { clinicId }, orderBy: { number: 'desc' } });
  return rows.map(({ limits, sources, ...row }) => ({ ...row, limits: JSON.parse(limits) as OwnLimits, sources: JSON.parse(sources) as Record<string, string> }));
}

/** Puts a version in force and has every open episode of the clinic judged again. Call within a transaction. */
export async function addRuleBook(queries: Queries, clinicId: string, { limits, sources, ...row }: RuleBookRow): Promise<void> {
  await queries.ruleBookVersion.create({ data: { id: newId(), clinicId, ...row, limits: JSON.stringify(limits), sources: JSON.stringify(sources) } });
  await queries.episode.updateMany({ where: { clinicId, closedAt: null }, data: { assessAt: row.madeAt } });
}
