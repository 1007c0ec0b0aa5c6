import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { CLOSED_LINK_DAYS, LINK_DAYS } from '../care/constants';
import { now } from '../edges/clock/now';
import { closeEpisode, hasWaitingPhoto, reopenEpisode } from '../edges/db/close-episode';
import { noteAudit } from '../edges/db/note-audit';
import type { Queries } from '../edges/db/open-database';
import { openFindings } from '../edges/db/open-findings';
import { endReviewClaim, findReviewClaim } from '../edges/db/review-claims';
import { checkClosing, CLOSING_STEPS } from '../review/check-closing';
import { LEAST_NOTE_LETTERS, MOST_NOTE_LETTERS } from '../review/constants';
import { orderFindings } from '../review/place-case';
import { aboutRule } from './about-rule';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findResource } from './find-resource';
import { linkEndsAt } from './hand-link';
import { store } from './store';

const bodySchema = z.discriminatedUnion('step', [
  z.strictObject({
    step: z.literal('close'),
    found: z.string(),
    answers: z.array(z.strictObject({ rule: z.string(), step: z.enum(CLOSING_STEPS), note: z.string() })).max(50),
    /** Findings that were on the screen. What came meanwhile nobody has looked at. */
    seen: z.array(z.string()).max(200),
  }),
  z.strictObject({ step: z.literal('reopen'), reason: z.string().trim().min(LEAST_NOTE_LETTERS).max(MOST_NOTE_LETTERS) }),
]);
type Asked = z.infer<typeof bodySchema>;

/** A clinician ends a follow-up, or opens it again with a reason. */
export async function commandCloseEpisode(actor: Actor, episodeId: string, body: unknown): Promise<Answer> {
  const { database } = await store();
  const may = guard(actor, 'episode.close', await findResource(database, episodeId));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood', { sentence: 'A few words are needed.' });
  const at = now();
  return database.$transaction(async (queries) => {
    const { closedAt } = await queries.episode.findUniqueOrThrow({ where: { id: may.episodeId }, select: { closedAt: true } });
    if ((closedAt !== null) === (read.data.step === 'close')) return refusal(409, 'changed', { sentence: 'Somebody else has changed this case meanwhile.' });
    const refused = read.data.step === 'close' ? await close(queries, actor, may.episodeId, read.data, at) : null;
    if (refused) return refused;
    if (read.data.step === 'reopen') await reopenEpisode(queries, may.episodeId, read.data.reason, actorName(actor), { at, linkEndsAt: linkEndsAt(at, LINK_DAYS) });
    await noteAudit(queries, { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: `episode.${read.data.step}`, rule: may.rule, at });
    return answer({ closed: read.data.step === 'close' });
  });
}

/** @returns why it was not closed; null where it was */
async function close(queries: Queries, actor: Extract<Actor, { staffId: string }>, episodeId: string, asked: Extract<Asked, { step: 'close' }>, at: Date): Promise<Answer | null> {
  const holder = await findReviewClaim(queries, episodeId, at);
  if (holder !== null && holder.staffId !== actor.staffId) return refusal(409, 'claimed', { sentence: `${holder.name} is working on this case now. Speak with them first.` });
  if (await hasWaitingPhoto(queries, episodeId)) return refusal(409, 'pending', { sentence: 'A photo of this case is still being worked on. Wait until it has been measured.' });
  const open = await openFindings(queries, episodeId, at);
  if (open.some(({ id }) => !asked.seen.includes(id))) return refusal(409, 'changed', { sentence: 'Something new has come on this case. Look at it, then close again.' });
  const checked = checkClosing(asked, [...new Set(orderFindings(open).map(({ rule }) => rule))], aboutRule);
  if ('problem' in checked) return refusal(400, 'notComplete', { sentence: checked.problem });
  await closeEpisode(queries, episodeId, open, checked.kept, actorName(actor), { at, linkEndsAt: linkEndsAt(at, CLOSED_LINK_DAYS) });
  await endReviewClaim(queries, episodeId, actor.staffId);
  return null;
}
