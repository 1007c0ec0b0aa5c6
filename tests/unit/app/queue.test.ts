import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { clockFace, secondsLeft } from '../../../app/(patient)/_patient/countdown';
import { nextCheckInMs } from '../../../app/(patient)/_patient/next-check-in';
import { sayWhen } from '../../../app/(patient)/_patient/say-when';
import { bodyOf, newCheckIn, type KeptCheckIn } from '../../../app/(patient)/_queue/kept-check-in';
import { localInstant } from '../../../app/(patient)/_queue/local-instant';
import { nextPiece, photoPieces, PIECE_BYTES } from '../../../app/(patient)/_queue/photo-pieces';
import { pictureType } from '../../../app/(patient)/_queue/picture-type';
import { retryDelayMs } from '../../../app/(patient)/_queue/retry-delay';
import { sendCheckIn, type SendPorts } from '../../../app/(patient)/_queue/send-check-in';
import { sha256Hex } from '../../../app/(patient)/_queue/sha256-hex';
import { checkInBodySchema, PHOTO_HEADERS } from '../../../lib/care/patient-contract';

const ID = '5a1a1a54-9f3c-4b1e-8b44-0c6f2f2ab001';

describe('a photo in pieces', () => {
  it('has pieces that follow each other without gap and end with the photo', () => {
    const pieces = photoPieces(2 * PIECE_BYTES + 1);
    expect(pieces).toEqual([
      { from: 0, to: PIECE_BYTES },
      { from: PIECE_BYTES, to: 2 * PIECE_BYTES },
      { from: 2 * PIECE_BYTES, to: 2 * PIECE_BYTES + 1 },
    ]);
    expect(photoPieces(PIECE_BYTES)).toHaveLength(1);
    expect(nextPiece(PIECE_BYTES + 5)).toEqual({ index: 1, skipBytes: 5 });
  });

  it('is known by its first bytes', () => {
    const bytes = (text: string) => new Uint8Array(Buffer.from(text, 'latin1'));
    expect(pictureType(bytes('\xff\xd8\xff\xe0 and so on'))).toBe('image/jpeg');
    expect(pictureType(bytes('\x89PNG\r\n\x1a\n'))).toBe('image/png');
    expect(pictureType(bytes('\0\0\0\x18ftypheic'))).toBe('image/heic');
    expect(pictureType(bytes('\0\0\0\x18ftypisom'))).toBeNull();
    expect(pictureType(bytes('<svg xmlns="http'))).toBeNull();
  });

  it('has the hash that everybody computes', async () => {
    // FIPS 180-2, appendix B.1: the message "abc".
    expect(await sha256Hex(new TextEncoder().encode('abc').buffer)).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });
});

describe('time', () => {
  it('is written with the offset of the phone', () => {
    expect(localInstant(Date.parse('2026-03-01T08:30:00Z'), 60)).toBe('2026-03-01T09:30:00+01:00');
    expect(localInstant(Date.parse('2026-03-01T02:30:00Z'), -210)).toBe('2026-02-28T23:00:00-03:30');
  });

  it('is said in the zone of the patient', () => {
    expect(sayWhen('2026-03-01T23:30:00Z', 'time', 'en', 'Asia/Tokyo')).toMatch(/Monday.*2 March.*08:30/);
    expect(sayWhen('2026-03-01T23:30:00Z', 'day', 'es', 'Europe/Madrid')).toMatch(/lunes.*2 de marzo/);
  });

  it('counts down by when it began, also after a pause, and never below nothing', () => {
    expect([0, 60_000, 599_001, 700_000].map((now) => secondsLeft(0, 10, now))).toEqual([600, 540, 1, 0]);
    expect(clockFace(65)).toBe('1:05');
  });

  it('puts the next check-in after the newest one that arrived', () => {
    const plan = { dressingStaysHours: 24, soaksPerDay: 2, soakMinutes: 10, coverBetweenSoaks: true, checkInEveryHours: 24, graceHours: 36, notes: '' };
    const received = [{ clientId: ID, at: '2026-03-03T10:00:00Z', kind: 'daily' as const }];
    expect(new Date(nextCheckInMs({ plan, received, procedureAt: '2026-03-01T09:00:00Z' })).toISOString()).toBe('2026-03-04T10:00:00.000Z');
    expect(new Date(nextCheckInMs({ plan, received: [], procedureAt: '2026-03-01T09:00:00Z' })).toISOString()).toBe('2026-03-02T09:00:00.000Z');
  });

  it('between attempts grows to a minute and no further', () => {
    expect([1, 2, 3, 6, 60].map(retryDelayMs)).toEqual([2_000, 4_000, 8_000, 60_000, 60_000]);
  });
});

/** A server that holds bytes, a phone that holds pieces, and a line that can break. */
function made(photoBytes: number, breakAfter: readonly number[] = []) {
  const bytes = Buffer.from(Array.from({ length: photoBytes }, (_, at) => at % 251));
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const photo = { sha256, lengthBytes: bytes.length, mediaType: 'image/jpeg', kind: 'toe' as const, complete: false };
  let kept: KeptCheckIn = { ...newCheckIn(ID, 'owner', 'daily'), photo, at: '2026-03-01T09:30:00+01:00', answers: { pain: 3 } };
  const server = { held: Buffer.alloc(0), bodies: [] as unknown[], status: 200 };
  const log: string[] = [];
  let requests = 0;
  const json = (status: number, value: unknown) => new Response(JSON.stringify(value), { status });
  const receipt = () => json(200, { receivedBytes: server.held.length, complete: server.held.equals(bytes) });
  const ports: SendPorts = {
    request: async (path, init) => {
      requests += 1;
      log.push(`${init?.method ?? 'GET'} ${path.replace(/.*check-ins\/[0-9a-f-]+/, '')}`);
      if (path.includes('/photo')) {
        expect(new Headers(init?.headers).get(PHOTO_HEADERS.sha256)).toBe(sha256);
        if (init?.method !== 'PUT') return server.held.length === 0 ? json(404, {}) : receipt();
        server.held = Buffer.concat([server.held, Buffer.from(init.body as ArrayBuffer)]);
        if (breakAfter.includes(requests)) throw new TypeError('Failed to fetch');
        return receipt();
      }
      if (server.status !== 200) return json(server.status, {});
      server.bodies.push(checkInBodySchema.parse(JSON.parse(String(init?.body))));
      return json(200, { clientId: ID, receivedAt: '2026-03-01T08:31:00Z', callNow: false });
    },
    checkIn: async () => kept,
    piece: async (_id, _sha, index) => {
      const part = photoPieces(bytes.length)[index];
      return part && new Uint8Array(bytes.subarray(part.from, part.to)).buffer;
    },
    update: async (_id, change) => void (kept = change(kept)),
    forgetPieces: async () => void log.push('forget'),
  };
  return { ports, server, log, bytes, kept: () => kept, change: (more: Partial<KeptCheckIn>) => void (kept = { ...kept, ...more }) };
}

describe('sending', () => {
  it('sends the photo, then the answers, and forgets the bytes last', async () => {
    const { ports, server, log, bytes, kept } = made(2 * PIECE_BYTES + 10);
    expect(await sendCheckIn(ID, ports)).toBe('done');
    expect(log).toEqual(['GET /photo', 'PUT /photo?offset=0', `PUT /photo?offset=${PIECE_BYTES}`, `PUT /photo?offset=${2 * PIECE_BYTES}`, 'PUT ', 'forget']);
    expect(server.held.equals(bytes)).toBe(true);
    expect(kept().receipt?.receivedAt).toBe('2026-03-01T08:31:00Z');
  });

  it('goes on from where the server stands after the line broke, and forgets nothing before', async () => {
    const { ports, server, log, bytes, kept } = made(2 * PIECE_BYTES + 10, [3]);
    expect(await sendCheckIn(ID, ports)).toBe('later');
    expect([kept().receipt, log.includes('forget')]).toEqual([null, false]);
    expect(await sendCheckIn(ID, ports)).toBe('done');
    expect(log.filter((line) => line === `PUT /photo?offset=${PIECE_BYTES}`)).toHaveLength(1);
    expect(server.held.equals(bytes)).toBe(true);
  });

  it('goes on in the middle of a piece, if that is where the server stands', async () => {
    const { ports, server, bytes } = made(PIECE_BYTES + 10);
    server.held = bytes.subarray(0, 100);
    expect(await sendCheckIn(ID, ports)).toBe('done');
    expect(server.held.equals(bytes)).toBe(true);
  });

  it('stops for now when the server has dropped what it held', async () => {
    const { ports, server, kept } = made(2 * PIECE_BYTES + 10);
    const { request } = ports;
    const dropping: SendPorts = {
      ...ports,
      request: async (path, init) => {
        if (path.endsWith(`offset=${PIECE_BYTES}`)) server.held = Buffer.alloc(0);
        return path.endsWith(`offset=${PIECE_BYTES}`) ? new Response('{}', { status: 409 }) : request(path, init);
      },
    };
    expect(await sendCheckIn(ID, dropping)).toBe('later');
    expect(kept().photo?.complete).toBe(false);
    expect(await sendCheckIn(ID, ports)).toBe('done');
  });

  it('sends the photo of one that is still being filled in, and no answers', async () => {
    const { ports, server, change, kept } = made(10);
    change({ at: null });
    expect(await sendCheckIn(ID, ports)).toBe('done');
    expect([kept().photo?.complete, server.bodies.length]).toEqual([true, 0]);
  });

  it.each([
    [503, 'later', null],
    [429, 'later', null],
    [400, 'refused', 400],
    [401, 'refused', 401],
  ])('keeps everything when the server answers %i', async (status, outcome, refusedStatus) => {
    const { ports, server, kept, log } = made(10);
    server.status = status;
    expect(await sendCheckIn(ID, ports)).toBe(outcome);
    expect([kept().refusedStatus, kept().receipt, log.includes('forget')]).toEqual([refusedStatus, null, false]);
  });

  it('does not send what has its receipt', async () => {
    const { ports, server } = made(10);
    await sendCheckIn(ID, ports);
    await sendCheckIn(ID, ports);
    expect(server.bodies).toHaveLength(1);
  });

  it('leaves an empty worry out, and refuses to make a body of what was not sent', () => {
    const draft = newCheckIn(ID, 'owner', 'daily');
    expect(bodyOf({ ...draft, at: '2026-03-01T09:30:00+01:00', worry: '  ' })).not.toHaveProperty('worry');
    expect(() => bodyOf(draft)).toThrow(/received at: null/);
  });
});
