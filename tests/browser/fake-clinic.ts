/**
 * A clinic's server of the test's own: it answers the patient's contract from memory and passes everything else on to
 * the real pages. It keeps count, can be slow or gone, and breaks a connection when told to.
 */
import { createHash } from 'node:crypto';
import http from 'node:http';
import type { AddressInfo } from 'node:net';
import {
  checkInBodySchema,
  PHOTO_HEADERS,
  type CheckInBody,
  type CheckInReceipt,
  type PatientState,
  type PhotoVerdict,
} from '../../lib/care/patient-contract';

export interface ArrivedPhoto {
  bytes: Buffer;
  complete: boolean;
  kind: string;
}

export interface FakeClinic {
  readonly url: string;
  state: PatientState;
  /** The first word on a photo once it is complete; by what its bytes are. */
  verdictOf: (photo: Buffer) => PhotoVerdict;
  readonly photos: Map<string, ArrivedPhoto>;
  readonly checkIns: Map<string, CheckInBody>;
  /** Every request for the contract, as `METHOD path`. */
  readonly asked: string[];
  /** The connection of so many of the next photo pieces is cut after they were received. */
  cutPieces: number;
  close: () => Promise<void>;
}

const HOUR_MS = 3_600_000;

/** A made-up person so many hours after the procedure, in a zone that is not the test's own. */
export function stateAfterHours(hours: number, more: Partial<PatientState> = {}): PatientState {
  const now = Date.now();
  return {
    clinic: { name: 'Harbour Foot Clinic', phone: '+44 1632 960123', emergencyPhone: '999', openingHours: 'Mon to Fri, 8:30 to 17:00' },
    language: 'en',
    timeZone: 'Europe/London',
    now: new Date(now).toISOString(),
    procedureAt: new Date(now - hours * HOUR_MS).toISOString(),
    plan: { dressingStaysHours: 24, soaksPerDay: 2, soakMinutes: 10, coverBetweenSoaks: true, checkInEveryHours: 24, graceHours: 36, notes: '' },
    received: [],
    messages: [],
    askEveryTime: [],
    closed: false,
    ...more,
  };
}

export async function startFakeClinic(pagesPort: number, state: PatientState): Promise<FakeClinic> {
  const photos = new Map<string, ArrivedPhoto>();
  const checkIns = new Map<string, CheckInBody>();
  const receipts = new Map<string, CheckInReceipt>();
  const asked: string[] = [];
  const server = http.createServer((request, response) => {
    const path = request.url ?? '/';
    if (!path.startsWith('/api/patient/')) return passOn(pagesPort, request, response);
    asked.push(`${request.method} ${path}`);
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => answer(request, response, Buffer.concat(chunks)));
  });

  const answer = (request: http.IncomingMessage, response: http.ServerResponse, body: Buffer) => {
    const say = (status: number, json: unknown) => response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(json));
    const { pathname, searchParams } = new URL(request.url ?? '/', clinic.url);
    if (pathname === '/api/patient/state') return say(200, { ...clinic.state, now: new Date().toISOString() });
    const [, id, rest] = /^\/api\/patient\/check-ins\/([0-9a-f-]{36})(\/photo|\/photo\/verdict)?$/.exec(pathname) ?? [];
    if (id === undefined) return say(404, {});
    if (rest === '/photo/verdict') return say(200, photos.get(id)?.complete ? clinic.verdictOf(photos.get(id)!.bytes) : { state: 'waiting' });
    if (rest === '/photo') return takePhoto(id, request, body, Number(searchParams.get('offset') ?? '0'), say);
    const parsed = checkInBodySchema.safeParse(JSON.parse(body.toString()));
    if (!parsed.success) return say(400, { error: parsed.error.message });
    if (parsed.data.hasPhoto && !photos.get(id)?.complete) return say(409, {});
    checkIns.set(id, checkIns.get(id) ?? parsed.data);
    receipts.set(id, receipts.get(id) ?? { clientId: id, receivedAt: new Date().toISOString(), callNow: false });
    return say(200, receipts.get(id));
  };

  const takePhoto = (id: string, request: http.IncomingMessage, body: Buffer, offset: number, say: (status: number, json: unknown) => unknown) => {
    const key = String(request.headers[PHOTO_HEADERS.sha256]);
    let photo = photos.get(id);
    const same = photo !== undefined && (!photo.complete || sha256(photo.bytes) === key);
    if (request.method === 'GET' && !same) return say(404, {});
    if (photo === undefined || !same) photos.set(id, (photo = { bytes: Buffer.alloc(0), complete: false, kind: String(request.headers[PHOTO_HEADERS.kind]) }));
    if (request.method === 'PUT') {
      if (offset !== photo.bytes.length) return say(409, {});
      photo.bytes = Buffer.concat([photo.bytes, body]);
      photo.complete = sha256(photo.bytes) === key && photo.bytes.length === Number(request.headers[PHOTO_HEADERS.lengthBytes]);
      if (clinic.cutPieces > 0) {
        clinic.cutPieces -= 1;
        return request.socket.destroy();
      }
    }
    return say(200, { receivedBytes: photo.bytes.length, complete: photo.complete });
  };

  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const clinic: FakeClinic = {
    url: `http://localhost:${(server.address() as AddressInfo).port}`,
    state,
    verdictOf: () => ({ state: 'gotIt' }),
    photos,
    checkIns,
    asked,
    cutPieces: 0,
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections();
        server.close(() => closed());
      }),
  };
  return clinic;
}

const sha256 = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

function passOn(port: number, request: http.IncomingMessage, response: http.ServerResponse) {
  const { url, method, headers } = request;
  const onward = http.request({ port, host: '127.0.0.1', path: url, method, headers }, (answered) => {
    response.writeHead(answered.statusCode ?? 502, answered.headers);
    answered.pipe(response);
  });
  onward.on('error', () => response.destroy());
  request.pipe(onward);
}
