import { z } from 'zod';
import { type Actor, actorName, type StaffMember, type StaffRole } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { clearSignInDelay, takeSignInDelay } from '../edges/db/sign-in-delay';
import { findStaffByEmail } from '../edges/db/staff-people';
import { sweepStaffSessions } from '../edges/db/staff-sessions';
import { sessionCookie } from '../edges/session/session-cookie';
import { LOCK_SECONDS } from '../edges/session/staff-auth';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { authOfStore } from './auth-of-store';
import { passDoor } from './pass-door';
import { store } from './store';

const bodySchema = z.strictObject({ email: z.string().trim().toLowerCase().min(3).max(200), password: z.string().min(1).max(200), code: z.string().max(40).optional() });

/** Address, password and, where the person has one, a second factor for a session. An address that nobody has is answered like a wrong password, after the same work. */
export async function commandSignIn(actor: Actor, headers: Headers, body: unknown): Promise<Answer> {
  const may = guard(actor, 'staff.signIn', null);
  if (!may.allowed) return refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const { email } = read.data;
  const open = await store();
  const { database } = open;
  const at = now();
  const waitSeconds = await database.$transaction((queries) => takeSignInDelay(queries, email, at));
  if (waitSeconds > 0) return refusal(429, 'tooManyTries', { waitSeconds });

  const auth = await authOfStore(open);
  const passed = await passDoor(auth, read.data);
  if (passed === 'locked') return refusal(429, 'tooManyTries', { waitSeconds: LOCK_SECONDS });
  // The try stays counted: a password alone opens nothing, and codes cannot be guessed quickly.
  if (typeof passed === 'string') return refusal(401, passed);
  const { id, clinicId, role } = await findStaffByEmail(database, email);
  const staff: StaffMember = { role: role as StaffRole, staffId: id, clinicId };
  // What was signed in here before ends, whoever it was.
  await auth.api.signOut({ headers });
  // Nobody gets the cookie before it is on the list of who did what.
  await database.$transaction(async (queries) => {
    await clearSignInDelay(queries, email);
    await sweepStaffSessions(queries, at);
    await noteAudit(queries, { clinicId, episodeId: null, actor: actorName(staff), action: 'staff.signIn', rule: may.rule, at });
  });
  const cookie = await sessionCookie(auth, passed);
  return { ...answer({ signedIn: true, role }), headers: { 'set-cookie': cookie } };
}
