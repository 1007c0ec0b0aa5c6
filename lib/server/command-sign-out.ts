import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { endStaffSession } from '../edges/db/staff-sessions';
import { staffCookie } from '../edges/session/staff-cookie';
import { type Answer, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { staffTokenHash } from './read-actor';
import { store } from './store';

/** Ends the session on this machine, here and there. */
export async function commandSignOut(actor: Actor, headers: Headers): Promise<Answer> {
  const may = guard(actor, 'staff.signOut', findOwnClinic(actor));
  if (!may.allowed) return refusedBy(may);
  const { database, settings } = await store();
  const at = now();
  await database.$transaction(async (queries) => {
    await endStaffSession(queries, staffTokenHash(headers) ?? '', at);
    const clinicId = 'staffId' in actor ? actor.clinicId : null;
    await noteAudit(queries, { clinicId, episodeId: null, actor: actorName(actor), action: 'staff.signOut', rule: may.rule, at });
  });
  const secure = settings.origin?.startsWith('https:') ?? false;
  return { status: 204, headers: { 'set-cookie': staffCookie('', { secure, maxAgeSeconds: 0 }), 'clear-site-data': '"cache"' } };
}
