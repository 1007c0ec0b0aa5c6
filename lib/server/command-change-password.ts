import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { clearSignInDelay, takeSignInDelay } from '../edges/db/sign-in-delay';
import { findStaffEmail } from '../edges/db/staff-people';
import { authRefusal } from '../edges/session/auth-refusal';
import { sessionCookie } from '../edges/session/session-cookie';
import { LEAST_LETTERS, MOST_LETTERS } from '../edges/session/staff-password';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { authOfStore } from './auth-of-store';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';

const bodySchema = z.strictObject({ old: z.string().min(1).max(MOST_LETTERS), password: z.string().min(LEAST_LETTERS).max(MOST_LETTERS) });

/** Another password for oneself: the old one is asked for, as slowly as at the door. Every session ends, and on this machine another begins. */
export async function commandChangePassword(actor: Actor, headers: Headers, body: unknown): Promise<Answer> {
  const may = guard(actor, 'password.change', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notComplete', { sentence: `The old password, and a new one of at least ${LEAST_LETTERS} letters. Several words in a row do well.` });
  const { old, password } = read.data;
  if (password === old) return refusal(400, 'notComplete', { sentence: 'The new password is the old one.' });
  const open = await store();
  const { database } = open;
  const at = now();
  const email = await findStaffEmail(database, actor.staffId);
  const waitSeconds = await database.$transaction((queries) => takeSignInDelay(queries, email, at));
  if (waitSeconds > 0) return refusal(429, 'tooManyTries', { sentence: `Too many tries. Wait ${waitSeconds} s.` });
  const auth = await authOfStore(open);
  const changed = await auth.api.changePassword({ headers, body: { currentPassword: old, newPassword: password, revokeOtherSessions: true }, returnHeaders: true }).catch(authRefusal);
  if (typeof changed === 'string') return refusal(403, 'wrongPassword', { sentence: 'That is not your old password.' });
  await database.$transaction(async (queries) => {
    await clearSignInDelay(queries, email);
    await noteAudit(queries, { clinicId: actor.clinicId, episodeId: null, actor: actorName(actor), action: 'password.change', rule: may.rule, at });
  });
  return { ...answer({ changed: true }), headers: { 'set-cookie': await sessionCookie(auth, changed.headers) } };
}
