import { createHash } from 'node:crypto';
import { z } from 'zod';
import { type Actor, actorName, type StaffMember, type StaffRole } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { clearSignInDelay, takeSignInDelay } from '../edges/db/sign-in-delay';
import { endStaffSession, findStaffByEmail, startStaffSession } from '../edges/db/staff-sessions';
import { hashSecret, newSecret } from '../edges/session/secret';
import { staffCookie } from '../edges/session/staff-cookie';
import { isStaffPassword } from '../edges/session/staff-password';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { staffTokenHash } from './read-actor';
import { secondFactorKey } from './second-factor-key';
import { store } from './store';
import { takeSecondFactor } from './take-second-factor';

const bodySchema = z.strictObject({ email: z.string().trim().toLowerCase().min(3).max(200), password: z.string().min(1).max(200), code: z.string().max(40).optional() });
/** One working day: nobody is thrown out in the middle of a shift, and a forgotten machine is not open the next morning. */
const SESSION_HOURS = 10;
const SECONDS_PER_HOUR = 3600;

/** Address, password and, where the person has one, a second factor for a session. An address that nobody has is answered like a wrong password, after the same work. */
export async function commandSignIn(actor: Actor, headers: Headers, body: unknown): Promise<Answer> {
  const may = guard(actor, 'staff.signIn', null);
  if (!may.allowed) return refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const { email, password, code = null } = read.data;
  const open = await store();
  const { database, settings } = open;
  const startedAt = now();
  const emailHash = createHash('sha256').update(email).digest('hex');
  const waitSeconds = await database.$transaction((queries) => takeSignInDelay(queries, emailHash, startedAt));
  if (waitSeconds > 0) return refusal(429, 'tooManyTries', { waitSeconds });

  const found = await findStaffByEmail(database, email);
  const isRight = await isStaffPassword(password, found?.credential?.passwordHash ?? null);
  if (found === null || !isRight) return refusal(401, 'wrongPassword');

  const staff: StaffMember = { role: found.role as StaffRole, staffId: found.id, clinicId: found.clinicId };
  const key = await secondFactorKey(open);
  const cookie = newSecret();
  const maxAgeSeconds = SESSION_HOURS * SECONDS_PER_HOUR;
  const endsAt = new Date(startedAt.getTime() + maxAgeSeconds * 1000);
  const factor = await database.$transaction(async (queries) => {
    const outcome = await takeSecondFactor(queries, staff.staffId, code, startedAt, key);
    if (outcome === 'codeNeeded' || outcome === 'wrongCode') return outcome;
    await clearSignInDelay(queries, emailHash);
    // What was signed in here before ends, whoever it was.
    await endStaffSession(queries, staffTokenHash(headers) ?? '', startedAt);
    await startStaffSession(queries, { tokenHash: hashSecret(cookie) ?? '', staffId: staff.staffId, startedAt, endsAt });
    await noteAudit(queries, { clinicId: staff.clinicId, episodeId: null, actor: actorName(staff), action: 'staff.signIn', rule: may.rule, at: startedAt });
    return outcome;
  });
  // The try stays counted: a password alone opens nothing, and codes cannot be guessed quickly.
  if (factor === 'codeNeeded' || factor === 'wrongCode') return refusal(401, factor);
  const secure = settings.origin?.startsWith('https:') ?? false;
  return { ...answer({ signedIn: true, role: staff.role }), headers: { 'set-cookie': staffCookie(cookie, { secure, maxAgeSeconds }) } };
}
