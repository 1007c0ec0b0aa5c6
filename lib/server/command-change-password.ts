import { createHash } from 'node:crypto';
import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { clearSignInDelay, takeSignInDelay } from '../edges/db/sign-in-delay';
import { endOtherSessions } from '../edges/db/staff-sessions';
import { findStaffPassword, setStaffPassword } from '../edges/db/staff-people';
import { hashPassword, isStaffPassword } from '../edges/session/staff-password';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { LEAST_PASSWORD_LETTERS } from './command-join';
import { findOwnClinic } from './find-own-clinic';
import { staffTokenHash } from './read-actor';
import { store } from './store';

const bodySchema = z.strictObject({ old: z.string().min(1).max(200), password: z.string().min(LEAST_PASSWORD_LETTERS).max(200) });

/** Another password for oneself: the old one is asked for, as slowly as at the door, and every other session ends. */
export async function commandChangePassword(actor: Actor, headers: Headers, body: unknown): Promise<Answer> {
  const may = guard(actor, 'password.change', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notComplete', { sentence: `The old password, and a new one of at least ${LEAST_PASSWORD_LETTERS} letters. Several words in a row do well.` });
  const { old, password } = read.data;
  const { database } = await store();
  const at = now();
  const { email, passwordHash } = await findStaffPassword(database, actor.staffId);
  const emailHash = createHash('sha256').update(email).digest('hex');
  const waitSeconds = await database.$transaction((queries) => takeSignInDelay(queries, emailHash, at));
  if (waitSeconds > 0) return refusal(429, 'tooManyTries', { sentence: `Too many tries. Wait ${waitSeconds} s.` });
  if (!(await isStaffPassword(old, passwordHash))) return refusal(403, 'wrongPassword', { sentence: 'That is not your old password.' });
  if (password === old) return refusal(400, 'notComplete', { sentence: 'The new password is the old one.' });
  const fresh = await hashPassword(password);
  await database.$transaction(async (queries) => {
    await setStaffPassword(queries, actor.staffId, fresh, at);
    await endOtherSessions(queries, actor.staffId, staffTokenHash(headers) ?? '');
    await clearSignInDelay(queries, emailHash);
    await noteAudit(queries, { clinicId: actor.clinicId, episodeId: null, actor: actorName(actor), action: 'password.change', rule: may.rule, at });
  });
  return answer({ changed: true });
}
