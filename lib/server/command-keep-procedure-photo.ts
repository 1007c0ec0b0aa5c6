import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { PHOTO_HEADERS } from '../care/patient-contract';
import { procedurePhotoSchema } from '../care/start-contract';
import { now } from '../edges/clock/now';
import { keepPhotoRow } from '../edges/db/keep-photo-row';
import { noteAudit } from '../edges/db/note-audit';
import { LARGEST_PHOTO_BYTES, receivePiece } from '../edges/files/receive-piece';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findResource } from './find-resource';
import { store } from './store';

interface Sent {
  readonly kind: string;
  readonly headers: Headers;
  readonly body: AsyncIterable<Uint8Array> | null;
}

const declaredSchema = z.object({ kind: procedurePhotoSchema, sha256: z.string().regex(/^[0-9a-f]{64}$/), lengthBytes: z.coerce.number().int().min(1) });

async function* nothing(): AsyncGenerator<Uint8Array> {}

/** A photo that staff took on the day, in one piece: the desk has a network. The worker measures it like any other. */
export async function commandKeepProcedurePhoto(actor: Actor, episodeId: string, { kind, headers, body }: Sent): Promise<Answer> {
  const { database, settings } = await store();
  const may = guard(actor, 'episode.photo', await findResource(database, episodeId));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = declaredSchema.safeParse({ kind, sha256: headers.get(PHOTO_HEADERS.sha256), lengthBytes: headers.get(PHOTO_HEADERS.lengthBytes) });
  if (!read.success) return refusal(400, 'notUnderstood');
  if (read.data.lengthBytes > LARGEST_PHOTO_BYTES) return refusal(413, 'photoTooLarge');
  const photo = { ...read.data, episodeId: may.episodeId, clientId: `staff-${read.data.kind}` };
  const { state } = await receivePiece(settings.photoFolder, photo, 0, body ?? nothing());
  if (state === 'storageFull') return refusal(507, 'storageFull');
  if (state !== 'whole') return refusal(409, state === 'wrongHash' ? 'wrongHash' : 'notWhole');
  const at = now();
  await database.$transaction(async (queries) => {
    if (!(await keepPhotoRow(queries, photo, at))) return;
    await noteAudit(queries, { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: `photo.${photo.kind}`, rule: may.rule, at });
  });
  return answer({ received: true });
}
