import { z } from 'zod';
import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { employStaff, takeInvitation } from '../edges/db/staff-people';
import { hashSecret } from '../edges/session/secret';
import { hashPassword, LEAST_LETTERS, MOST_LETTERS } from '../edges/session/staff-password';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { store } from './store';

const bodySchema = z.strictObject({ secret: z.string(), password: z.string().min(LEAST_LETTERS).max(MOST_LETTERS) });

/** Makes a password for whoever was invited. An invitation counts once, and only when the button is pressed. */
export async function commandJoin(actor: Actor, body: unknown): Promise<Answer> {
  const may = guard(actor, 'invitation.use', null);
  if (!may.allowed) return refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notComplete', { sentence: `A password has at least ${LEAST_LETTERS} letters. Several words in a row do well.` });
  const tokenHash = hashSecret(read.data.secret);
  const { database } = await store();
  const at = now();
  const passwordHash = await hashPassword(read.data.password);
  return database.$transaction(async (queries) => {
    const invitation = tokenHash === null ? null : await takeInvitation(queries, tokenHash, at);
    const staffId = invitation && (await employStaff(queries, invitation, passwordHash, at));
    if (invitation === null || staffId === null) return refusal(410, 'invitationEnded', { sentence: 'This invitation does not stand any more. Ask for a new one.' });
    await noteAudit(queries, { clinicId: invitation.clinicId, episodeId: null, actor: `${invitation.role}:${staffId}`, action: 'invitation.use', rule: may.rule, at });
    return answer({ email: invitation.email });
  });
}
