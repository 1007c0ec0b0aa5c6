import { PHOTO_HEADERS } from '@/lib/care/patient-contract';
import type { ProcedurePhoto } from '@/lib/care/start-contract';
import { sha256Hex } from '../../(patient)/_queue/sha256-hex';

/** Sends one photo of the day whole. @returns whether the server has it, checked by its hash */
export async function sendProcedurePhoto(episodeId: string, kind: ProcedurePhoto, file: File): Promise<boolean> {
  try {
    const bytes = await file.arrayBuffer();
    const headers = { [PHOTO_HEADERS.sha256]: await sha256Hex(bytes), [PHOTO_HEADERS.lengthBytes]: String(bytes.byteLength) };
    return (await fetch(`/api/staff/episodes/${episodeId}/photos/${kind}`, { method: 'PUT', headers, body: bytes })).ok;
  } catch {
    return false;
  }
}
