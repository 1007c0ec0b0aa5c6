import type { PhotoKind } from '../../../lib/care/patient-contract';
import { photoPieces } from './photo-pieces';
import { phoneStore } from './phone-store';
import { pictureType } from './picture-type';
import { sha256Hex } from './sha256-hex';

/** The largest photo that is sent; 48-megapixel phones stay well below. */
const LARGEST_BYTES = 40 * 1024 * 1024;

/** Why a picked file was not kept; null when it lies on the phone and was read back byte for byte. */
export type PhotoTrouble = 'notAPicture' | 'tooLarge' | 'notKept' | null;

/**
 * Copies a picked file onto the phone at once (picking it again would give other bytes), then reads it back: only
 * what could be read back counts as kept. The bytes are never changed.
 */
export async function keepPhoto(clientId: string, kind: PhotoKind, file: Blob): Promise<PhotoTrouble> {
  if (file.size > LARGEST_BYTES) return 'tooLarge';
  try {
    const bytes = await file.arrayBuffer();
    const mediaType = pictureType(new Uint8Array(bytes.slice(0, 16)));
    if (mediaType === null) return 'notAPicture';
    const sha256 = await sha256Hex(bytes);
    const pieces = photoPieces(bytes.byteLength).map(({ from, to }) => bytes.slice(from, to));
    await phoneStore.putPhoto(clientId, { sha256, lengthBytes: bytes.byteLength, mediaType, kind, complete: false }, pieces);
    return (await readBack(clientId, sha256, bytes.byteLength)) === sha256 ? null : 'notKept';
  } catch {
    return 'notKept';
  }
}

async function readBack(clientId: string, sha256: string, lengthBytes: number): Promise<string> {
  const whole = new Uint8Array(lengthBytes);
  for (const [index, { from }] of photoPieces(lengthBytes).entries()) {
    const piece = await phoneStore.piece(clientId, sha256, index);
    if (piece === undefined) return '';
    whole.set(new Uint8Array(piece), from);
  }
  return sha256Hex(whole.buffer);
}
