import { z } from 'zod';
import { type Actor, actorName, STAFF_ROLES, type StaffMember } from '../access/actor';
import { guard } from '../access/guard';
import type { AuditNote } from '../care/audit-actions';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import type { Queries } from '../edges/db/open-database';
import { endSecondFactor } from '../edges/db/second-factors';
import { addInvitation, findStaff, isLastAdmin, setStaffActive, setStaffRole } from '../edges/db/staff-people';
import { hashSecret, newSecret } from '../edges/session/secret';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { linkEndsAt, ownOrigin } from './hand-link';
import { store } from './store';

const INVITATION_DAYS = 7;
const role = z.enum(STAFF_ROLES);
const bodySchema = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('invite'), name: z.string().trim().min(2).max(80), email: z.email().trim().toLowerCase().max(200), role }),
  z.strictObject({ step: z.literal('role'), staffId: z.string(), role }),
  z.strictObject({ step: z.literal('end'), staffId: z.string() }),
  z.strictObject({ step: z.literal('endFactor'), staffId: z.string() }),
]);
type Asked = z.infer<typeof bodySchema>;

/** Invites somebody, gives another role, ends access or a lost second factor. The last admin stays one. */
export async function commandChangePeople(actor: Actor, headers: Headers, body: unknown): Promise<Answer> {
  const may = guard(actor, 'people.change', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood', { sentence: 'A name, an e-mail address and a role are needed.' });
  const { database, settings } = await store();
  const at = now();
  return database.$transaction(async (queries) => {
    const done = read.data.step === 'invite' ? await invite(queries, actor, read.data, `${ownOrigin(settings, headers)}/join#`, at) : await change(queries, actor, read.data);
    if (done.status === 200) await noteAudit(queries, { clinicId: actor.clinicId, episodeId: null, actor: actorName(actor), action: noteOf(read.data), rule: may.rule, at });
    return done;
  });
}

/** Ids and roles; never a name or an address. */
function noteOf(asked: Asked): AuditNote {
  if (asked.step === 'invite') return `people.invite ${asked.role}`;
  return asked.step === 'role' ? `people.role ${asked.role} ${asked.staffId}` : `people.${asked.step} ${asked.staffId}`;
}

async function invite(queries: Queries, actor: StaffMember, { name, email, role: as }: Extract<Asked, { step: 'invite' }>, place: string, at: Date): Promise<Answer> {
  const secret = newSecret();
  await addInvitation(queries, hashSecret(secret) ?? '', { clinicId: actor.clinicId, name, email, role: as, madeBy: actorName(actor) }, at, linkEndsAt(at, INVITATION_DAYS));
  // Behind the #, so that it comes into no log.
  return answer({ address: place + secret });
}

async function change(queries: Queries, { clinicId }: StaffMember, asked: Exclude<Asked, { step: 'invite' }>): Promise<Answer> {
  const { step, staffId } = asked;
  if ((await findStaff(queries, clinicId, staffId)) === null) return refusal(404, 'notFound');
  const losesAdmin = step === 'end' || (step === 'role' && asked.role !== 'admin');
  if (losesAdmin && (await isLastAdmin(queries, clinicId, staffId))) return refusal(409, 'lastAdmin', { sentence: 'This is the last admin. Make somebody else one first.' });
  if (step === 'role') await setStaffRole(queries, staffId, asked.role);
  else if (step === 'end') await setStaffActive(queries, staffId, false);
  else await endSecondFactor(queries, staffId);
  return answer({ changed: true });
}
