import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { LINK_DAYS } from '../care/constants';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { endPatientLink, renewPatientLink } from '../edges/db/patient-links';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findResource } from './find-resource';
import { handLink, linkEndsAt } from './hand-link';
import { store } from './store';

const bodySchema = z.strictObject({ step: z.enum(['renew', 'end']) });

/** Ends a person's link, or puts a new one in its place. Either way the old one opens nothing any more. */
export async function commandChangeLink(actor: Actor, headers: Headers, episodeId: string, body: unknown): Promise<Answer> {
  const { database, settings } = await store();
  const may = guard(actor, 'episode.handOut', await findResource(database, episodeId));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const { step } = read.data;
  const at = now();
  return database.$transaction(async (queries) => {
    await noteAudit(queries, { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: `link.${step}`, rule: may.rule, at });
    if (step === 'end') {
      await endPatientLink(queries, may.episodeId, at);
      return answer({ link: null });
    }
    const { link, tokenHash } = handLink(settings, headers);
    await renewPatientLink(queries, may.episodeId, tokenHash, linkEndsAt(at, LINK_DAYS));
    return answer({ link });
  });
}
