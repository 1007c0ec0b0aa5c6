import { checkInReceiptSchema, PHOTO_HEADERS, photoReceiptSchema, type PhotoReceipt } from '../../../lib/care/patient-contract';
import { bodyOf, isUnsent, type KeptCheckIn, type KeptPhoto } from './kept-check-in';
import { nextPiece } from './photo-pieces';

/** The outside, as the sender needs it; tests give it one of their own. */
export interface SendPorts {
  readonly request: (path: string, init?: RequestInit) => Promise<Response>;
  readonly checkIn: (clientId: string) => Promise<KeptCheckIn | undefined>;
  readonly piece: (clientId: string, sha256: string, index: number) => Promise<ArrayBuffer | undefined>;
  readonly update: (clientId: string, change: (kept: KeptCheckIn) => KeptCheckIn) => Promise<void>;
  readonly forgetPieces: (clientId: string) => Promise<void>;
}

/** `later`: no network, or the server is busy; try again. `refused`: it was understood and not taken. */
export type SendOutcome = 'done' | 'later' | 'refused';

/** A server's answer that ends this attempt. */
class Stopped extends Error {
  constructor(readonly status: number) {
    super(`The server answered ${status}.`);
  }
}

export const checkInPath = (clientId: string): string => `/api/patient/check-ins/${clientId}`;

/** Not now, but perhaps soon: too many requests, a time-out, or trouble of its own. */
const passes = (status: number) => status === 408 || status === 429 || status >= 500;

/**
 * Sends what the server does not have of one check-in: first the rest of its photo, then its answers, and only after
 * the receipt forgets the photo's bytes. May be broken off and called again at any point; the id makes it one check-in.
 */
export async function sendCheckIn(clientId: string, ports: SendPorts): Promise<SendOutcome> {
  try {
    const kept = await ports.checkIn(clientId);
    if (kept?.photo && !kept.photo.complete) await sendPhoto(clientId, kept.photo, ports);
    const ready = await ports.checkIn(clientId);
    if (ready === undefined || !isUnsent(ready)) return 'done';
    if (ready.photo && !ready.photo.complete) return 'later';
    await sendAnswers(ready, ports);
    return 'done';
  } catch (error) {
    const status = error instanceof Stopped ? error.status : 0;
    if (status === 0 || passes(status)) return 'later';
    await ports.update(clientId, (latest) => ({ ...latest, refusedStatus: status }));
    return 'refused';
  }
}

async function sendAnswers(kept: KeptCheckIn, ports: SendPorts): Promise<void> {
  const response = await ports.request(checkInPath(kept.clientId), {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(bodyOf(kept)),
  });
  if (!response.ok) throw new Stopped(response.status);
  const receipt = checkInReceiptSchema.parse(await response.json());
  await ports.update(kept.clientId, (latest) => ({ ...latest, receipt, refusedStatus: null }));
  await ports.forgetPieces(kept.clientId);
}

async function sendPhoto(clientId: string, photo: KeptPhoto, ports: SendPorts): Promise<void> {
  const path = `${checkInPath(clientId)}/photo`;
  const headers = {
    [PHOTO_HEADERS.sha256]: photo.sha256,
    [PHOTO_HEADERS.lengthBytes]: String(photo.lengthBytes),
    [PHOTO_HEADERS.kind]: photo.kind,
  };
  let held = await askHeld(path, headers, ports);
  while (!held.complete) {
    const { index, skipBytes } = nextPiece(held.receivedBytes);
    const piece = await ports.piece(clientId, photo.sha256, index);
    // Another photo took its place meanwhile, or all bytes are there and do not agree: begin again later.
    if (piece === undefined) throw new Stopped(0);
    const sent = await ports.request(`${path}?offset=${held.receivedBytes}`, {
      method: 'PUT',
      headers: { ...headers, 'content-type': photo.mediaType },
      body: piece.slice(skipBytes),
    });
    // The server holds another number of bytes than we thought: its word counts.
    const now = sent.status === 409 ? await askHeld(path, headers, ports) : await readHeld(sent);
    // No step forward, or back to the start because the bytes did not agree: not again at once, but after a while.
    if (!now.complete && now.receivedBytes <= held.receivedBytes) throw new Stopped(0);
    held = now;
  }
  await ports.update(clientId, (latest) =>
    latest.photo?.sha256 === photo.sha256 ? { ...latest, photo: { ...latest.photo, complete: true } } : latest,
  );
}

async function askHeld(path: string, headers: HeadersInit, ports: SendPorts): Promise<PhotoReceipt> {
  const response = await ports.request(path, { headers });
  return response.status === 404 ? { receivedBytes: 0, complete: false } : readHeld(response);
}

async function readHeld(response: Response): Promise<PhotoReceipt> {
  if (!response.ok) throw new Stopped(response.status);
  return photoReceiptSchema.parse(await response.json());
}
