import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import type { PhotoReceipt } from '../care/patient-contract';
import { now } from '../edges/clock/now';
import { keepPhotoRow } from '../edges/db/keep-photo-row';
import { noteAudit } from '../edges/db/note-audit';
import { receivePiece } from '../edges/files/receive-piece';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { ownEpisode } from './own-episode';
import { photoDeclared } from './photo-declared';
import { store } from './store';

interface Piece {
  readonly clientId: string;
  readonly offset: string | null;
  readonly headers: Headers;
  readonly body: AsyncIterable<Uint8Array> | null;
}

async function* nothing(): AsyncGenerator<Uint8Array> {}

/** Takes one piece of a photo. The photo is confirmed only when its file is whole and its row is written. */
export async function commandKeepPhotoPiece(actor: Actor, { clientId, offset, headers, body }: Piece): Promise<Answer> {
  const may = guard(actor, 'photo.send', ownEpisode(actor));
  if (!may.allowed || actor.role !== 'patient') return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = photoDeclared(clientId, headers);
  if ('refused' in read) return read.refused;
  const from = Number(offset ?? '0');
  if (!Number.isSafeInteger(from) || from < 0) return refusal(400, 'notUnderstood', { detail: 'offset: a whole number of bytes is needed' });

  const { database, settings } = await store();
  const photo = { ...read.declared, episodeId: may.episodeId };
  const outcome = await receivePiece(settings.photoFolder, photo, from, body ?? nothing());
  switch (outcome.state) {
    case 'storageFull':
      return refusal(507, 'storageFull');
    case 'wrongHash':
      return refusal(409, 'wrongHash');
    case 'notHere':
      return answer(receipt(outcome.receivedBytes, false), 409);
    case 'unfinished':
      return answer(receipt(outcome.receivedBytes, false));
    case 'whole': {
      const at = now();
      await database.$transaction(async (queries) => {
        if (!(await keepPhotoRow(queries, photo, at))) return;
        await noteAudit(queries, { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'photo.send', rule: may.rule, at });
      });
      return answer(receipt(photo.lengthBytes, true));
    }
  }
}

const receipt = (receivedBytes: number, complete: boolean): PhotoReceipt => ({ receivedBytes, complete });
