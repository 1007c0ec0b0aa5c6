/** What a phone does: sends a photo in pieces and goes on where the server stands, then the answers; through any `send`. */
import { randomUUID } from 'node:crypto';
import { checkInReceiptSchema, type CheckInBody, type CheckInReceipt, photoReceiptSchema } from '../../lib/care/patient-contract';
import { sha256Of } from './test-clinic';

export type Send = (address: string, init: RequestInit) => Promise<Response>;
const PIECE_BYTES = 32 * 1024;

export const newClientId = (): string => randomUUID();

export const photoHeaders = (photo: Uint8Array, kind = 'toe'): Record<string, string> => ({
  'x-photo-sha256': sha256Of(photo),
  'x-photo-length': String(photo.length),
  'x-photo-kind': kind,
});

/** Until the server has confirmed all of it. What fails throws; calling again goes on. */
export async function sendPhoto(send: Send, clientId: string, photo: Uint8Array, { kind = 'toe', pieceBytes = PIECE_BYTES } = {}): Promise<void> {
  const address = `/api/patient/check-ins/${clientId}/photo`;
  const headers = photoHeaders(photo, kind);
  let held = photoReceiptSchema.parse(await (await send(address, { headers })).json());
  while (!held.complete) {
    const body = Uint8Array.from(photo.subarray(held.receivedBytes, held.receivedBytes + pieceBytes));
    const response = await send(`${address}?offset=${held.receivedBytes}`, { method: 'PUT', headers, body });
    if (response.status !== 200 && response.status !== 409) throw new Error(`A piece was answered ${response.status}.`);
    held = photoReceiptSchema.parse(await response.json());
  }
}

export const checkInBody = (more: Partial<CheckInBody> = {}): CheckInBody => ({
  kind: 'daily',
  at: new Date().toISOString(),
  answers: { pain: 2, wetness: 'damp' },
  hasPhoto: false,
  ...more,
});

export async function sendCheckIn(send: Send, clientId: string, body: CheckInBody): Promise<CheckInReceipt> {
  const init = { method: 'PUT', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
  const response = await send(`/api/patient/check-ins/${clientId}`, init);
  if (response.status !== 200) throw new Error(`The check-in was answered ${response.status}.`);
  return checkInReceiptSchema.parse(await response.json());
}
