import { createHash, randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import { photoPath } from '../../../lib/edges/files/photo-path';
import { receivedBytesOf, receivePiece } from '../../../lib/edges/files/receive-piece';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'foldwatch-files-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const sha256Of = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const declare = (bytes: Uint8Array, episodeId = 'episode-1') => ({ episodeId, sha256: sha256Of(bytes), lengthBytes: bytes.length });

/** As a connection delivers it: in chunks, and perhaps broken off. */
async function* chunks(bytes: Uint8Array, breaksAt = Infinity): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += 10_000) {
    if (at >= breaksAt) throw new Error('connection lost');
    yield bytes.subarray(at, Math.min(at + 10_000, bytes.length));
    await new Promise((go) => setImmediate(go));
  }
}

const filesBelow = (place: string): string[] =>
  existsSync(place) ? readdirSync(place, { recursive: true, withFileTypes: true }).filter((one) => one.isFile()).map(({ name }) => name) : [];

describe('a photo that comes in pieces', () => {
  const bytes = randomBytes(120_000);
  const photo = declare(bytes);

  it('is whole when the last piece is there, and lies under its hash', async () => {
    expect(await receivePiece(folder, photo, 0, chunks(bytes.subarray(0, 50_000)))).toEqual({ state: 'unfinished', receivedBytes: 50_000 });
    expect(existsSync(photoPath(folder, photo))).toBe(false);
    expect(await receivePiece(folder, photo, 50_000, chunks(bytes.subarray(50_000)))).toEqual({ state: 'whole' });
    expect(sha256Of(readFileSync(photoPath(folder, photo)))).toBe(photo.sha256);
    expect(filesBelow(folder)).toEqual([photo.sha256]);
  });

  it('goes on where a broken connection left it', async () => {
    await expect(receivePiece(folder, photo, 0, chunks(bytes, 60_000))).rejects.toThrow('connection lost');
    const held = await receivedBytesOf(folder, photo);
    expect(held).toBe(60_000);
    expect(await receivePiece(folder, photo, held, chunks(bytes.subarray(held)))).toEqual({ state: 'whole' });
  });

  it('refuses a piece that would leave a hole, and says what is held', async () => {
    await receivePiece(folder, photo, 0, chunks(bytes.subarray(0, 20_000)));
    expect(await receivePiece(folder, photo, 30_000, chunks(bytes.subarray(30_000)))).toEqual({ state: 'notHere', receivedBytes: 20_000 });
  });

  it('takes a piece again that came before', async () => {
    await receivePiece(folder, photo, 0, chunks(bytes.subarray(0, 80_000)));
    expect(await receivePiece(folder, photo, 20_000, chunks(bytes.subarray(20_000)))).toEqual({ state: 'whole' });
  });

  it('takes nothing past the declared end', async () => {
    const short = { ...photo, lengthBytes: 100_000 };
    expect((await receivePiece(folder, short, 0, chunks(bytes))).state).toBe('notHere');
    expect(await receivedBytesOf(folder, short)).toBeLessThanOrEqual(100_000);
    expect(existsSync(photoPath(folder, short))).toBe(false);
  });

  it('throws away bytes whose hash is another, and can be sent again', async () => {
    const damaged = Uint8Array.from(bytes);
    damaged[77] ^= 1;
    expect(await receivePiece(folder, photo, 0, chunks(damaged))).toEqual({ state: 'wrongHash' });
    expect(filesBelow(folder)).toEqual([]);
    expect(await receivePiece(folder, photo, 0, chunks(bytes))).toEqual({ state: 'whole' });
  });

  it('is one whole file when twenty senders send it at once', async () => {
    const outcomes = await Promise.all(Array.from({ length: 20 }, () => receivePiece(folder, photo, 0, chunks(bytes))));
    expect(new Set(outcomes.map(({ state }) => state))).toEqual(new Set(['whole']));
    expect(filesBelow(folder)).toEqual([photo.sha256]);
    expect(sha256Of(readFileSync(photoPath(folder, photo)))).toBe(photo.sha256);
  });

  it('is each person’s own, also where two send the same picture', async () => {
    await receivePiece(folder, photo, 0, chunks(bytes));
    expect(await receivePiece(folder, declare(bytes, 'episode-2'), 0, chunks(bytes.subarray(0, 10)))).toEqual({ state: 'unfinished', receivedBytes: 10 });
  });
});

it('accepts no name that leads elsewhere', async () => {
  const photo = declare(Buffer.from('a'));
  await expect(receivePiece(folder, { ...photo, episodeId: '../elsewhere' }, 0, chunks(Buffer.from('a')))).rejects.toThrow(/photoPath/);
  await expect(receivePiece(folder, { ...photo, sha256: '../../passwd' }, 0, chunks(Buffer.from('a')))).rejects.toThrow(/photoPath/);
});

/** A disk of 100 kB; only root can make one. */
function smallDisk(place: string): boolean {
  mkdirSync(place, { recursive: true });
  const made = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=100k', 'tmpfs', place]).status === 0;
  if (!made) console.warn('skipped: no small disk can be mounted here, a full disk was not tried');
  return made;
}

const disk = mkdtempSync(path.join(tmpdir(), 'foldwatch-disk-'));
describe.skipIf(!smallDisk(disk))('a disk that is full', () => {
  afterAll(() => {
    spawnSync('umount', [disk]);
    rmSync(disk, { recursive: true, force: true });
  });

  it('is said, keeps what had its place, and leaves nothing under the final name', async () => {
    const bytes = randomBytes(300_000);
    const photo = declare(bytes);
    expect(await receivePiece(disk, photo, 0, chunks(bytes))).toEqual({ state: 'storageFull' });
    expect(existsSync(photoPath(disk, photo))).toBe(false);
    const held = await receivedBytesOf(disk, photo);
    expect(held).toBeGreaterThan(0);
    expect(held).toBeLessThan(bytes.length);
    // Room for the pieces, and none for the whole file beside them.
    const half = randomBytes(60_000);
    rmSync(path.join(disk, 'unfinished'), { recursive: true });
    expect(await receivePiece(disk, declare(half), 0, chunks(half))).toEqual({ state: 'storageFull' });
    expect(filesBelow(path.join(disk, 'whole'))).toEqual([]);
  });
});
