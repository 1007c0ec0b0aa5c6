/** Reads a PNG chunk by chunk (W3C PNG, third edition) and leaves out what no decoder needs to see. */
import { inflateSync } from 'node:zlib';
import { MAX_FILE_PARTS } from '../../photo/constants';
import { decodeRefusal } from '../../photo/decode-refusals';
import { readCodePoints } from './read-code-points';
import type { HeaderResult } from './container-header';

interface PngChunk {
  readonly type: string;
  readonly data: Uint8Array;
  /** The chunk with its length, type and checksum. */
  readonly whole: Uint8Array;
}

const SIGNATURE_BYTES = 8;
/** Length, type and checksum around the data of a chunk. */
const FRAME_BYTES = 12;

/** Pixels, and what is needed to understand them. Text chunks can unpack to gigabytes: no decoder gets them. */
const DECODER_CHUNKS = new Set(['IHDR', 'PLTE', 'tRNS', 'iCCP', 'IDAT', 'IEND']);

/** The largest profile seen in real files is half a megabyte; more than this is no profile. */
const MAX_PROFILE_BYTES = 4_000_000;

const GREY_TYPES = new Set([0, 4]);
const ALPHA_TYPES = new Set([4, 6]);

export function readPngHeader(bytes: Uint8Array): HeaderResult {
  const chunks = [...pngChunks(bytes)];
  const first = (type: string): Uint8Array | undefined => chunks.find((chunk) => chunk.type === type)?.data;
  const header = first('IHDR');
  if (chunks[0]?.type !== 'IHDR' || header?.length !== 13) return decodeRefusal('corrupt', 'no PNG header chunk');
  if (chunks.at(-1)?.type !== 'IEND') return decodeRefusal('truncated', 'no PNG end chunk');
  const animation = first('acTL');
  if (animation && numberAt(animation, 0) !== 1) return decodeRefusal('severalPictures', 'animated PNG');
  const icc = readProfile(first('iCCP'));
  if (icc === 'unreadable') return decodeRefusal('unsupportedColour', 'the colour profile cannot be unpacked');
  const points = first('cICP');
  const codePoints = points ? readCodePoints(points[0], points[1]) : first('sRGB') ? 'srgb' : null;
  if (codePoints === 'unsupported') return decodeRefusal('unsupportedColour', `code points ${points?.join(' ')}`);
  const kept = chunks.filter((chunk) => DECODER_CHUNKS.has(chunk.type));
  return {
    format: 'png',
    widthPx: numberAt(header, 0),
    heightPx: numberAt(header, 4),
    channels: GREY_TYPES.has(header[9]) ? 'grey' : 'rgb',
    bitsPerChannel: header[8],
    mayHaveAlpha: ALPHA_TYPES.has(header[9]) || first('tRNS') !== undefined,
    // Code points outrank the profile, the profile outranks the sRGB chunk (W3C PNG, 4.3).
    icc: points && codePoints ? null : icc,
    codePoints: icc && !points ? null : codePoints,
    exif: first('eXIf') ?? null,
    hasGainMap: false,
    picture: kept.length === chunks.length ? bytes : withChunks(bytes, kept),
  };
}

const numberAt = (data: Uint8Array, at: number): number =>
  data.length < at + 4 ? NaN : new DataView(data.buffer, data.byteOffset).getUint32(at);

function* pngChunks(bytes: Uint8Array): Generator<PngChunk> {
  let at = SIGNATURE_BYTES;
  for (let part = 0; part < MAX_FILE_PARTS && at + FRAME_BYTES <= bytes.length; part += 1) {
    const end = at + FRAME_BYTES + numberAt(bytes, at);
    if (end > bytes.length) return;
    const type = Buffer.from(bytes.subarray(at + 4, at + 8)).toString('latin1');
    yield { type, data: bytes.subarray(at + 8, end - 4), whole: bytes.subarray(at, end) };
    if (type === 'IEND') return;
    at = end;
  }
}

function withChunks(bytes: Uint8Array, chunks: readonly PngChunk[]): Uint8Array {
  return Buffer.concat([bytes.subarray(0, SIGNATURE_BYTES), ...chunks.map((chunk) => chunk.whole)]);
}

/** iCCP: a name of up to 79 characters, a zero, the compression method 0, then the deflated profile. */
function readProfile(data: Uint8Array | undefined): Uint8Array | null | 'unreadable' {
  if (!data) return null;
  const nameEnd = data.indexOf(0);
  try {
    return inflateSync(data.subarray(nameEnd + 2), { maxOutputLength: MAX_PROFILE_BYTES });
  } catch {
    return 'unreadable';
  }
}
