import { createHash } from 'node:crypto';
import type { Finding } from '../../decide/finding';
import { newId } from './new-id';
import { renewOpenCase } from './open-case';
import type { Queries } from './open-database';

/** What makes a finding this one and no other. That it is closed later does not make it another. */
const fingerprintOf = ({ rule, level, at, evidence, ruleBookVersion }: Finding): string =>
  createHash('sha256').update(JSON.stringify([rule, level, at, evidence, ruleBookVersion])).digest('hex');

/** Adds findings that are not there yet; what is there stays as it is. Call within a transaction. */
export async function addFindings(queries: Queries, episodeId: string, findings: readonly Finding[], foundAt: Date): Promise<void> {
  const rows = await queries.finding.findMany({ where: { episodeId }, select: { fingerprint: true } });
  const known = new Set(rows.map(({ fingerprint }) => fingerprint));
  for (const finding of findings) {
    const fingerprint = fingerprintOf(finding);
    if (known.has(fingerprint)) continue;
    known.add(fingerprint);
    const { rule, level, ruleBookVersion } = finding;
    await queries.finding.create({ data: { id: newId(), episodeId, rule, level, ruleBookVersion, json: JSON.stringify(finding), fingerprint, foundAt } });
  }
  await renewOpenCase(queries, episodeId, foundAt);
}
