import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { findEpisodeByLink } from '../edges/db/find-episode';
import { noteAudit } from '../edges/db/note-audit';
import { startPatientSession } from '../edges/db/patient-sessions';
import { patientCookie } from '../edges/session/patient-cookie';
import { hashSecret, newSecret } from '../edges/session/secret';
import { type Answer, refusedBy } from './answer';
import { store } from './store';

const SESSION_DAYS = 60;
const SECONDS_PER_DAY = 86_400;

/** Exchanges the secret of a personal link for a session, and sends the browser to an address without it. */
export async function commandOpenLink(actor: Actor, secret: string): Promise<Answer> {
  const may = guard(actor, 'link.open', null);
  if (!may.allowed) return refusedBy(may);
  const { database, settings } = await store();
  const [tokenHash, startedAt] = [hashSecret(secret), now()];
  const episode = tokenHash && (await findEpisodeByLink(database, tokenHash, startedAt));
  if (!episode) return { status: 303, headers: { location: '/link-ended' } };

  const cookie = newSecret();
  const maxAgeSeconds = SESSION_DAYS * SECONDS_PER_DAY;
  const endsAt = new Date(startedAt.getTime() + maxAgeSeconds * 1000);
  await database.$transaction(async (queries) => {
    await startPatientSession(queries, { tokenHash: hashSecret(cookie) ?? '', episodeId: episode.id, startedAt, endsAt });
    const entry = { clinicId: episode.clinicId, episodeId: episode.id, actor: actorName(actor), action: 'link.open' as const, rule: may.rule };
    await noteAudit(queries, { ...entry, at: startedAt });
  });
  const secure = settings.origin?.startsWith('https:') ?? false;
  return { status: 303, headers: { location: '/today', 'set-cookie': patientCookie(cookie, { secure, maxAgeSeconds }) } };
}
