import { createHash } from 'node:crypto';
import type { Finding } from '../../decide/finding';
import { newId } from './new-id';
import type { Queries } from './open-database';

/** As the pipeline gives it. */
export interface AssessmentWords {
  readonly ruleBookVersion: string;
  readonly findings: readonly Finding[];
  readonly trend: unknown;
}

/** What makes a finding this one and no other. That it is closed later does not make it another. */
const fingerprintOf = ({ rule, level, at, evidence, ruleBookVersion }: Finding): string =>
  createHash('sha256').update(JSON.stringify([rule, level, at, evidence, ruleBookVersion])).digest('hex');

/**
 * Keeps what the rules said: all of it as one assessment where anything changed, and each new finding by itself.
 * Findings of before stay. Call within a transaction.
 */
export async function storeAssessment(queries: Queries, episodeId: string, words: AssessmentWords, madeAt: Date): Promise<void> {
  const { findings, trend, ruleBookVersion } = words;
  const said = { findings: JSON.stringify(findings), trend: JSON.stringify(trend) };
  const newest = await queries.assessment.findFirst({ where: { episodeId }, orderBy: { madeAt: 'desc' } });
  if (newest?.findings === said.findings && newest.trend === said.trend && newest.ruleBookVersion === ruleBookVersion) return;
  await queries.assessment.create({ data: { id: newId(), episodeId, ruleBookVersion, madeAt, ...said } });
  const known = new Set((await queries.finding.findMany({ where: { episodeId }, select: { fingerprint: true } })).map((one) => one.fingerprint));
  for (const finding of findings) {
    const fingerprint = fingerprintOf(finding);
    if (known.has(fingerprint)) continue;
    const { rule, level } = finding;
    await queries.finding.create({
      data: { id: newId(), episodeId, rule, level, ruleBookVersion, json: JSON.stringify(finding), fingerprint, foundAt: madeAt },
    });
  }
}
