import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { mintSerial } from '../card/mint-serial';
import { printCheck } from '../card/print-check';
import { now } from '../edges/clock/now';
import { addEpisodeCard, measureEpisodeCard, retireEpisodeCard } from '../edges/db/episode-cards';
import { noteAudit } from '../edges/db/note-audit';
import { drawBelow } from '../edges/paper/draw-below';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findResource } from './find-resource';
import { store } from './store';

const bodySchema = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('add') }),
  z.strictObject({ step: z.literal('retire'), serial: z.string() }),
  z.strictObject({ step: z.literal('measure'), serial: z.string(), barReadsMm: z.number() }),
]);

/** Gives a person another card, takes one out of use, or notes what a ruler reads along the bar of one. */
export async function commandChangeCard(actor: Actor, episodeId: string, body: unknown): Promise<Answer> {
  const { database } = await store();
  const may = guard(actor, 'episode.handOut', await findResource(database, episodeId));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const asked = read.data;
  const check = asked.step === 'measure' ? printCheck({ barReadsMm: asked.barReadsMm, bankCardFits: null }) : null;
  if (check && 'problem' in check) return refusal(400, 'notComplete', { sentence: check.problem });
  const at = now();
  return database.$transaction(async (queries) => {
    const serial = asked.step === 'add' ? mintSerial(drawBelow) : asked.serial;
    if (asked.step === 'add') await addEpisodeCard(queries, may.episodeId, serial, at);
    if (asked.step === 'measure' && !(await measureEpisodeCard(queries, may.episodeId, serial, asked.barReadsMm))) return refusal(404, 'notFound');
    if (asked.step === 'retire' && !(await retireEpisodeCard(queries, may.episodeId, serial, at))) {
      return refusal(409, 'lastCard', { sentence: 'This is the only card in use. Add another first.' });
    }
    await noteAudit(queries, { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: `card.${asked.step}`, rule: may.rule, at });
    return answer({ serial });
  });
}
