import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import type { PhotoReceipt } from '../care/patient-contract';
import { hasPhotoRow } from '../edges/db/keep-photo-row';
import { receivedBytesOf } from '../edges/files/receive-piece';
import { type Answer, answer, refusedBy } from './answer';
import { ownEpisode } from './own-episode';
import { photoDeclared } from './photo-declared';
import { store } from './store';

/** How much of a photo is held safely. Without its row a photo is not confirmed, even where all bytes are there. */
export async function loadPhotoReceipt(actor: Actor, clientId: string, headers: Headers): Promise<Answer> {
  const may = guard(actor, 'photo.send', ownEpisode(actor));
  if (!may.allowed) return refusedBy(may);
  const read = photoDeclared(clientId, headers);
  if ('refused' in read) return read.refused;
  const { database, settings } = await store();
  const photo = { ...read.declared, episodeId: may.episodeId };
  const complete = await hasPhotoRow(database, photo);
  const receivedBytes = complete ? photo.lengthBytes : await receivedBytesOf(settings.photoFolder, photo);
  return answer({ receivedBytes, complete } satisfies PhotoReceipt);
}
