import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { mintSerial } from '../card/mint-serial';
import { casePrefix, nextCaseCode } from '../care/case-code';
import { checkStart } from '../care/check-start';
import { LINK_DAYS } from '../care/constants';
import { startBodySchema, type Started } from '../care/start-contract';
import { now } from '../edges/clock/now';
import { findEpisode } from '../edges/db/find-episode';
import { highestCaseCodes } from '../edges/db/highest-case-codes';
import { noteAudit } from '../edges/db/note-audit';
import { planTemplatesOf } from '../edges/db/plan-templates';
import { readClinicFacts } from '../edges/db/read-clinic-facts';
import { startEpisode } from '../edges/db/start-episode';
import { drawBelow } from '../edges/paper/draw-below';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { handLink, linkEndsAt } from './hand-link';
import { store } from './store';

/** Starts an episode with its plan, its first card and its link. The link is told in this answer and never again. */
export async function commandStartEpisode(actor: Actor, headers: Headers, body: unknown): Promise<Answer> {
  const may = guard(actor, 'episode.start', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = startBodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood', { sentence: z.prettifyError(read.error) });
  const { id, planTemplateId, antibioticStartedAt, ...entered } = read.data;
  const { database, settings } = await store();
  const madeAt = now();
  const { clinicId } = actor;
  return database.$transaction(async (queries) => {
    const clinic = await readClinicFacts(queries, clinicId);
    const problem = checkStart(read.data, madeAt.toISOString(), clinic.asksBirthYear);
    if (problem !== null) return refusal(400, 'notComplete', { sentence: problem });
    if ((await findEpisode(queries, id)) !== null) return refusal(409, 'startedAlready');
    const template = (await planTemplatesOf(queries, clinicId)).find((one) => one.id === planTemplateId);
    if (template === undefined) return refusal(400, 'notComplete', { sentence: 'That plan is not offered any more. Choose another.' });
    const caseCode = nextCaseCode(clinic.name, await highestCaseCodes(queries, clinicId, casePrefix(clinic.name)));
    const { link, tokenHash } = handLink(settings, headers);
    const cardSerial = mintSerial(drawBelow);
    const words = {
      ...entered,
      clinicId,
      caseCode,
      timeZone: clinic.timeZone,
      antibioticStartedAt: antibioticStartedAt === null ? null : new Date(antibioticStartedAt),
      plan: template.plan,
      cards: [{ serial: cardSerial, barReadsMm: null }],
      linkTokenHash: tokenHash,
      linkEndsAt: linkEndsAt(madeAt, LINK_DAYS),
    };
    const episodeId = await startEpisode(queries, words, madeAt, id);
    await noteAudit(queries, { clinicId, episodeId, actor: actorName(actor), action: 'episode.start', rule: may.rule, at: madeAt });
    const started: Started = { episodeId, caseCode, link, cardSerial };
    return answer(started);
  });
}
