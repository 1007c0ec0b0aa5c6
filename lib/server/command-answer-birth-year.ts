import { z } from 'zod';
import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { findEpisode } from '../edges/db/find-episode';
import { countBirthYearTries, noteBirthYearTry } from '../edges/db/patient-sessions';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { ownEpisode } from './own-episode';
import { patientTokenHash } from './read-actor';
import { store } from './store';

const bodySchema = z.strictObject({ birthYear: z.number().int() });
/** Few enough that guessing is hopeless, and a day later it may be tried again: nobody is locked out for good. */
const MOST_TRIES = 6;
const WITHIN_MS = 24 * 3_600_000;

/** The second secret, where the clinic asks for one. */
export async function commandAnswerBirthYear(actor: Actor, headers: Headers, body: unknown): Promise<Answer> {
  const may = guard(actor, 'birthYear.answer', ownEpisode(actor));
  if (!may.allowed) return refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood', { detail: z.prettifyError(read.error) });
  const { database } = await store();
  const moment = now();
  return database.$transaction(async (queries) => {
    const tries = await countBirthYearTries(queries, may.episodeId, new Date(moment.getTime() - WITHIN_MS));
    if (tries >= MOST_TRIES) return refusal(429, 'tooManyTries');
    const right = (await findEpisode(queries, may.episodeId))?.birthYear === read.data.birthYear;
    await noteBirthYearTry(queries, patientTokenHash(headers) ?? '', right ? moment : null);
    return right ? answer({ confirmed: true }) : refusal(403, 'wrongBirthYear', { triesLeft: MOST_TRIES - tries - 1 });
  });
}
