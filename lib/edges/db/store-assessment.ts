import type { Finding } from '../../decide/finding';
import { addFindings } from './add-finding';
import { newId } from './new-id';
import type { Queries } from './open-database';

/** As the pipeline gives it. */
export interface AssessmentWords {
  readonly ruleBookVersion: string;
  readonly findings: readonly Finding[];
  readonly trend: unknown;
}

/**
 * Keeps what the rules said: all of it as one assessment where anything changed, and each new finding by itself.
 * Findings of before stay. Call within a transaction.
 */
export async function storeAssessment(queries: Queries, episodeId: string, words: AssessmentWords, madeAt: Date): Promise<void> {
  const { ruleBookVersion } = words;
  const said = { findings: JSON.stringify(words.findings), trend: JSON.stringify(words.trend) };
  const newest = await queries.assessment.findFirst({ where: { episodeId }, orderBy: { madeAt: 'desc' } });
  if (newest?.findings === said.findings && newest.trend === said.trend && newest.ruleBookVersion === ruleBookVersion) return;
  await queries.assessment.create({ data: { id: newId(), episodeId, ruleBookVersion, madeAt, ...said } });
  await addFindings(queries, episodeId, words.findings, madeAt);
}
