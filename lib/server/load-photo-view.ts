import { readFile } from 'node:fs/promises';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { findPhoto } from '../edges/db/find-photo';
import { noteAudit } from '../edges/db/note-audit';
import { viewPath } from '../edges/files/photo-path';
import { type Answer, refusal, refusedBy } from './answer';
import { store } from './store';

/** The picture made for people's eyes, never the file that was sent. Every look is noted. */
export async function loadPhotoView(actor: Actor, photoId: string): Promise<Answer> {
  const { database, settings } = await store();
  const photo = await findPhoto(database, photoId);
  const may = guard(actor, 'photo.view', photo);
  if (!may.allowed) return refusedBy(may);
  const sha256 = photo?.newestAnalysis?.viewSha256 ?? null;
  if (sha256 === null) return refusal(404, 'notFound');
  const bytes = new Uint8Array(await readFile(viewPath(settings.photoFolder, { episodeId: may.episodeId, sha256 })));
  await noteAudit(database, { clinicId: photo?.clinicId ?? null, episodeId: may.episodeId, actor: actorName(actor), action: 'photo.view', rule: may.rule, at: now() });
  return { status: 200, bytes, headers: { 'content-type': 'image/jpeg', 'content-disposition': 'inline; filename="photo.jpg"' } };
}
