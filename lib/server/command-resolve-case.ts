import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { keepResolution } from '../edges/db/keep-resolution';
import { noteAudit } from '../edges/db/note-audit';
import { openFindings } from '../edges/db/open-findings';
import { endReviewClaim, findReviewClaim } from '../edges/db/review-claims';
import { checkResolution } from '../review/check-resolution';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findResource } from './find-resource';
import { store } from './store';

const bodySchema = z.strictObject({
  action: z.string(),
  note: z.string(),
  message: z.string().nullable(),
  dryness: z.enum(['confirmed', 'dismissed']).nullable(),
  /** Findings that were on the screen. What came meanwhile nobody has looked at, and it stays. */
  seen: z.array(z.string()).min(1).max(200),
});

/** A person's word on a case. It counts only while nobody else has the case, and only on what was seen. */
export async function commandResolveCase(actor: Actor, episodeId: string, body: unknown): Promise<Answer> {
  const { database } = await store();
  const may = guard(actor, 'review.resolve', await findResource(database, episodeId));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood', { detail: z.prettifyError(read.error) });
  const { seen, ...entered } = read.data;
  const at = now();
  return database.$transaction(async (queries) => {
    const holder = await findReviewClaim(queries, may.episodeId, at);
    if (holder !== null && holder.staffId !== actor.staffId) return refusal(409, 'claimed', { by: holder.name, since: holder.claimedAt.toISOString() });
    const open = await openFindings(queries, may.episodeId, at);
    if (open.length === 0 || open.some(({ id }) => !seen.includes(id))) return refusal(409, 'changed');
    const checked = checkResolution(entered, open.some(({ rule }) => rule === 'dry'));
    if ('problem' in checked) return refusal(400, 'notComplete', { sentence: checked.problem });
    await keepResolution(queries, may.episodeId, open, checked.kept, actorName(actor), at);
    await endReviewClaim(queries, may.episodeId, actor.staffId);
    const entry = { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: `review.resolve ${checked.kept.action}` as const, rule: may.rule, at };
    await noteAudit(queries, entry);
    return answer({ resolved: true, leavesOpen: checked.kept.leavesOpen });
  });
}
