import type { KeptResolution } from '../../review/check-resolution';
import type { OpenFinding } from '../../review/place-case';
import { newId } from './new-id';
import { renewOpenCase } from './open-case';
import type { Queries } from './open-database';

/**
 * Keeps a person's word on every rule that is open on a case, sends the message where there is one, and has the rules
 * asked again. Call within a transaction.
 */
export async function keepResolution(queries: Queries, episodeId: string, open: readonly OpenFinding[], kept: KeptResolution, by: string, at: Date): Promise<void> {
  const { action, reason, message, dryness } = kept;
  const known = await queries.finding.findMany({ where: { id: { in: open.map(({ id }) => id) } }, select: { id: true } });
  const isFinding = new Set(known.map(({ id }) => id));
  const byRule = new Map(open.map((finding) => [finding.rule, finding]));
  for (const { rule, id } of byRule.values()) {
    const outcome = rule === 'dry' ? dryness : null;
    await queries.resolution.create({ data: { id: newId(), episodeId, findingId: isFinding.has(id) ? id : null, rule, action, reason, outcome, by, at } });
  }
  if (message !== null) await queries.message.create({ data: { id: newId(), episodeId, by, text: message, at } });
  await queries.episode.updateMany({ where: { id: episodeId }, data: { assessAt: at } });
  await renewOpenCase(queries, episodeId, at);
}
