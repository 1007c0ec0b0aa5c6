/**
 * Photos arrive in pieces over bad networks. What has arrived waits in an unfinished file whose size is the number of
 * bytes held: a piece may begin anywhere up to its end, so the file never has a hole, and pieces sent twice, even at the
 * same time, write the same bytes to the same place.
 */
import { constants } from 'node:fs';
import { access, mkdir, open, rm, stat } from 'node:fs/promises';
import type { FileHandle } from 'node:fs/promises';
import path from 'node:path';
import { keepWhole } from './keep-whole';
import { photoPath, type PhotoName, unfinishedPath } from './photo-path';

/** 48-megapixel phones stay well below. */
export const LARGEST_PHOTO_BYTES = 40 * 1024 * 1024;
const READ_BYTES = 1024 * 1024;

export interface PhotoDeclared extends PhotoName {
  readonly lengthBytes: number;
}

export type PieceOutcome =
  | { readonly state: 'whole' }
  | { readonly state: 'unfinished'; readonly receivedBytes: number }
  /** The piece would leave a hole, or reaches past the declared end. */
  | { readonly state: 'notHere'; readonly receivedBytes: number }
  /** All bytes came and their hash is another: they were thrown away, the phone still has the photo. */
  | { readonly state: 'wrongHash' }
  | { readonly state: 'storageFull' };

/** Takes one piece, and finishes the photo when it was the last. What arrived before a broken connection is kept. */
export async function receivePiece(
  folder: string,
  photo: PhotoDeclared,
  offset: number,
  piece: AsyncIterable<Uint8Array>,
): Promise<PieceOutcome> {
  const whole = photoPath(folder, photo);
  if (await exists(whole)) return { state: 'whole' };
  const unfinished = unfinishedPath(folder, photo, photo.lengthBytes);
  try {
    await mkdir(path.dirname(unfinished), { recursive: true });
    const handle = await open(unfinished, constants.O_RDWR | constants.O_CREAT);
    try {
      const placed = await writePiece(handle, photo.lengthBytes, offset, piece);
      const receivedBytes = (await handle.stat()).size;
      if (!placed) return { state: 'notHere', receivedBytes };
      if (receivedBytes < photo.lengthBytes) return { state: 'unfinished', receivedBytes };
      const kept = await keepWhole(whole, photo.sha256, bytesOf(handle));
      await rm(unfinished, { force: true });
      return { state: kept ? 'whole' : 'wrongHash' };
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (isFull(error)) return { state: 'storageFull' };
    throw error;
  }
}

/** How many bytes of an unfinished photo are held. */
export async function receivedBytesOf(folder: string, photo: PhotoDeclared): Promise<number> {
  const found = await stat(unfinishedPath(folder, photo, photo.lengthBytes)).catch(() => null);
  return found?.size ?? 0;
}

/** @returns false, and nothing more written, where the piece does not fit */
async function writePiece(handle: FileHandle, lengthBytes: number, offset: number, piece: AsyncIterable<Uint8Array>): Promise<boolean> {
  if (offset > (await handle.stat()).size) return false;
  let at = offset;
  try {
    for await (const bytes of piece) {
      if (at + bytes.length > lengthBytes) return false;
      for (let written = 0; written < bytes.length; ) {
        written += (await handle.write(bytes, written, bytes.length - written, at + written)).bytesWritten;
      }
      at += bytes.length;
    }
    return true;
  } finally {
    await handle.datasync();
  }
}

async function* bytesOf(handle: FileHandle): AsyncGenerator<Uint8Array> {
  for (let at = 0; ; ) {
    const { bytesRead, buffer } = await handle.read(Buffer.alloc(READ_BYTES), 0, READ_BYTES, at);
    if (bytesRead === 0) return;
    yield buffer.subarray(0, bytesRead);
    at += bytesRead;
  }
}

const exists = (file: string): Promise<boolean> =>
  access(file).then(
    () => true,
    () => false,
  );

const isFull = (error: unknown): boolean => ['ENOSPC', 'EDQUOT', 'EFBIG'].includes((error as NodeJS.ErrnoException).code ?? '');
