import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { findPhoto } from '../edges/db/find-photo';
import { noteAudit } from '../edges/db/note-audit';
import { addOutlineVersion, readDrawnPhoto } from '../edges/db/outline-versions';
import { LEAST_NOTE_LETTERS, MOST_NOTE_LETTERS } from '../review/constants';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { drawnSchema, measureAgain } from './measure-again';
import { store } from './store';

const bodySchema = drawnSchema.extend({
  reason: z.string().trim().max(MOST_NOTE_LETTERS),
  /** The version that was on the screen; 0 where only the program had drawn. */
  from: z.int().min(0),
});

/** Keeps an outline as a person drew it, with why, beside all versions of before, and has the rules asked again. */
export async function commandKeepOutline(actor: Actor, photoId: string, body: unknown): Promise<Answer> {
  const { database, settings } = await store();
  const may = guard(actor, 'outline.redraw', await findPhoto(database, photoId));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const { reason, from, ...asked } = read.data;
  if (reason.length < LEAST_NOTE_LETTERS) return refusal(400, 'notComplete', { sentence: 'Why is it drawn anew? A note is kept with it.' });
  const drawn = await readDrawnPhoto(database, photoId);
  const again = await measureAgain(drawn, asked, settings.photoFolder);
  if ('problem' in again) return refusal(409, again.problem);
  const made = { photoId, episodeId: may.episodeId, number: from + 1, methodVersion: drawn.analysis?.methodVersion ?? '', madeBy: actorName(actor), reason };
  const at = now();
  return database.$transaction(async (queries) => {
    const newest = (await readDrawnPhoto(queries, photoId)).newest?.number ?? 0;
    if (newest !== from || (drawn.newest?.number ?? 0) !== from) return refusal(409, 'changed');
    await addOutlineVersion(queries, { ...made, outlines: again.kept, measurements: again.measurements }, at);
    await noteAudit(queries, { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: `outline.redraw ${asked.outline}`, rule: may.rule, at });
    return answer({ number: made.number });
  });
}
