import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { sessionCookie } from '../edges/session/session-cookie';
import { type Answer, refusedBy } from './answer';
import { authOfStore } from './auth-of-store';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';

/** Ends the session on this machine, here and there. */
export async function commandSignOut(actor: Actor, headers: Headers): Promise<Answer> {
  const may = guard(actor, 'staff.signOut', findOwnClinic(actor));
  if (!may.allowed) return refusedBy(may);
  const open = await store();
  const auth = await authOfStore(open);
  const ended = await auth.api.signOut({ headers, returnHeaders: true });
  const clinicId = 'staffId' in actor ? actor.clinicId : null;
  await noteAudit(open.database, { clinicId, episodeId: null, actor: actorName(actor), action: 'staff.signOut', rule: may.rule, at: now() });
  return { status: 204, headers: { 'set-cookie': await sessionCookie(auth, ended.headers), 'clear-site-data': '"cache"' } };
}
