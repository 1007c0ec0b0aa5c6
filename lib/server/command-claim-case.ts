import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { endReviewClaim, findReviewClaim, keepReviewClaim } from '../edges/db/review-claims';
import { CLAIM_MINUTES } from '../review/constants';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findResource } from './find-resource';
import { store } from './store';

const bodySchema = z.strictObject({ step: z.enum(['keep', 'takeOver', 'letGo']) });
const MS_PER_MINUTE = 60_000;

/** Who is working on a case: it is kept while the case is open on somebody's screen, and taken over only on purpose. */
export async function commandClaimCase(actor: Actor, episodeId: string, body: unknown): Promise<Answer> {
  const { database } = await store();
  const may = guard(actor, 'review.claim', await findResource(database, episodeId));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const { step } = read.data;
  const moment = now();
  return database.$transaction(async (queries) => {
    if (step === 'letGo') {
      await endReviewClaim(queries, may.episodeId, actor.staffId);
      return answer({ mine: false });
    }
    const holder = await findReviewClaim(queries, may.episodeId, moment);
    const isOthers = holder !== null && holder.staffId !== actor.staffId;
    if (isOthers && step === 'keep') return refusal(409, 'claimed', { by: holder.name, since: holder.claimedAt.toISOString() });
    if (holder === null || isOthers) {
      const entry = { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), rule: may.rule, at: moment };
      await noteAudit(queries, { ...entry, action: isOthers ? 'review.takeOver' : 'review.claim' });
    }
    await keepReviewClaim(queries, may.episodeId, actor.staffId, { now: moment, endsAt: new Date(moment.getTime() + CLAIM_MINUTES * MS_PER_MINUTE) });
    return answer({ mine: true });
  });
}
