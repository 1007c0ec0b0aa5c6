import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { endPatientSession } from '../edges/db/patient-sessions';
import { patientCookie } from '../edges/session/patient-cookie';
import { type Answer, refusedBy } from './answer';
import { ownEpisode } from './own-episode';
import { patientTokenHash } from './read-actor';
import { store } from './store';

/** Ends the session on this phone, here and there. */
export async function commandLeave(actor: Actor, headers: Headers): Promise<Answer> {
  const may = guard(actor, 'session.leave', ownEpisode(actor));
  if (!may.allowed) return refusedBy(may);
  const { database, settings } = await store();
  await endPatientSession(database, patientTokenHash(headers) ?? '');
  const secure = settings.origin?.startsWith('https:') ?? false;
  return {
    status: 204,
    headers: { 'set-cookie': patientCookie('', { secure, maxAgeSeconds: 0 }), 'clear-site-data': '"cache"' },
  };
}
