/** Reads a WebP's RIFF chunks (RFC 9649): one still picture, lossy or lossless, with or without the extended header. */
import { MAX_FILE_PARTS } from '../../photo/constants';
import { decodeRefusal } from '../../photo/decode-refusals';
import type { HeaderResult } from './container-header';

const RIFF_HEADER_BYTES = 12;
const CHUNK_HEADER_BYTES = 8;

interface Frame {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly mayHaveAlpha: boolean;
}

export function readWebpHeader(bytes: Uint8Array): HeaderResult {
  if (bytes.length < RIFF_HEADER_BYTES + CHUNK_HEADER_BYTES) return decodeRefusal('truncated', 'WebP ends early');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.getUint32(4, true) + CHUNK_HEADER_BYTES > bytes.length) return decodeRefusal('truncated', 'WebP ends early');
  const chunks = readChunks(bytes, view);
  if (chunks.has('ANIM') || chunks.has('ANMF')) return decodeRefusal('severalPictures', 'animated WebP');
  const lossy = chunks.get('VP8 ');
  const lossless = chunks.get('VP8L');
  const frame = lossy ? readLossy(lossy) : lossless ? readLossless(lossless) : null;
  if (!frame) return decodeRefusal('corrupt', 'no WebP frame header');
  return {
    format: 'webp',
    widthPx: frame.widthPx,
    heightPx: frame.heightPx,
    channels: 'rgb',
    bitsPerChannel: 8,
    mayHaveAlpha: frame.mayHaveAlpha || chunks.has('ALPH'),
    icc: chunks.get('ICCP') ?? null,
    codePoints: null,
    exif: withoutPrefix(chunks.get('EXIF')),
    hasGainMap: false,
    picture: bytes,
  };
}

function readChunks(bytes: Uint8Array, view: DataView): Map<string, Uint8Array> {
  const chunks = new Map<string, Uint8Array>();
  let at = RIFF_HEADER_BYTES;
  for (let part = 0; part < MAX_FILE_PARTS && at + CHUNK_HEADER_BYTES <= bytes.length; part += 1) {
    const start = at + CHUNK_HEADER_BYTES;
    const end = start + view.getUint32(at + 4, true);
    const type = Buffer.from(bytes.subarray(at, at + 4)).toString('latin1');
    if (!chunks.has(type)) chunks.set(type, bytes.subarray(start, end));
    at = end + (end % 2);
  }
  return chunks;
}

/** RFC 6386, 9.1: three bytes of frame tag, the start code 9D 01 2A, then 14 bits of width and of height. */
function readLossy(data: Uint8Array): Frame | null {
  if (data.length < 10 || data[3] !== 0x9d || data[4] !== 0x01 || data[5] !== 0x2a) return null;
  const widthPx = (data[6] | (data[7] << 8)) & 0x3fff;
  const heightPx = (data[8] | (data[9] << 8)) & 0x3fff;
  return { widthPx, heightPx, mayHaveAlpha: false };
}

/** RFC 9649, 3.4: the signature 2F, then 14 bits of width − 1, 14 bits of height − 1 and one bit for alpha. */
function readLossless(data: Uint8Array): Frame | null {
  if (data.length < 5 || data[0] !== 0x2f) return null;
  const bits = (data[1] | (data[2] << 8) | (data[3] << 16) | (data[4] << 24)) >>> 0;
  return { widthPx: (bits & 0x3fff) + 1, heightPx: ((bits >>> 14) & 0x3fff) + 1, mayHaveAlpha: ((bits >>> 28) & 1) === 1 };
}

/** Some writers repeat the JPEG prefix in front of the TIFF block. */
function withoutPrefix(exif: Uint8Array | undefined): Uint8Array | null {
  if (!exif) return null;
  return Buffer.from(exif.subarray(0, 4)).toString('latin1') === 'Exif' ? exif.subarray(6) : exif;
}
