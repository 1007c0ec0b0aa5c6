import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { PHOTO_HEADERS, type PhotoVerdict } from '../care/patient-contract';
import { findPhotoOf, type PhotoRow } from '../edges/db/find-photo';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { ownEpisode } from './own-episode';
import { store } from './store';

/** The first word on a check-in's newest photo, or on the one whose hash is asked for. */
export async function loadPhotoVerdict(actor: Actor, clientId: string, headers: Headers): Promise<Answer> {
  const may = guard(actor, 'verdict.read', ownEpisode(actor));
  if (!may.allowed) return refusedBy(may);
  const { database } = await store();
  const photo = await findPhotoOf(database, may.episodeId, clientId, headers.get(PHOTO_HEADERS.sha256));
  return photo === null ? refusal(404, 'notFound') : answer(verdictOn(photo));
}

/** A picture of a dressing is never measured: that it is there is all there is to say. */
function verdictOn({ kind, newestAnalysis }: PhotoRow): PhotoVerdict {
  if (kind === 'dressing') return { state: 'gotIt' };
  if (newestAnalysis === null) return { state: 'waiting' };
  const { outcome, gates } = newestAnalysis;
  if (outcome === 'measured') return { state: 'gotIt' };
  return gates.length > 0 ? { state: 'retake', gates: [...gates] } : { state: 'aPersonLooks' };
}
