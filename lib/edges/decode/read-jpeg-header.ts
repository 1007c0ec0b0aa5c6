/** Reads a JPEG's frame, profile and EXIF block, and whether its coded data reaches its own end marker. */
import { decodeRefusal } from '../../photo/decode-refusals';
import type { HeaderResult } from './container-header';
import { END_OF_IMAGE, START_OF_SCAN, jpegSegments, type JpegSegment } from './jpeg-segments';

/** Baseline, extended sequential and progressive Huffman coding (ITU-T T.81 table B.1): what every camera writes. */
const READABLE_FRAMES = new Set([0xc0, 0xc1, 0xc2]);
const NOT_FRAMES = new Set([0xc4, 0xc8, 0xcc]);
const APP1 = 0xe1;
const APP2 = 0xe2;

const CHANNELS: Readonly<Record<number, 'grey' | 'rgb' | 'cmyk'>> = { 1: 'grey', 3: 'rgb', 4: 'cmyk' };

/** Words with which phones mark the second picture of a gain-map file: Apple, Adobe/Google, ISO 21496-1. */
const GAIN_MAP_WORDS = ['HDRGainMap', 'hdrgm:', 'urn:iso:std:iso:ts:21496'];

const latin1 = (bytes: Uint8Array): string => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('latin1');
const startsWith = (payload: Uint8Array, word: string): boolean => latin1(payload.subarray(0, word.length)) === word;

export function readJpegHeader(bytes: Uint8Array): HeaderResult {
  let frame: JpegSegment | undefined;
  let exif: Uint8Array | null = null;
  let scans = 0;
  let endOfImage: number | null = null;
  const profileParts: Uint8Array[] = [];
  for (const segment of jpegSegments(bytes)) {
    const { marker, payload } = segment;
    if (marker >= 0xc0 && marker <= 0xcf && !NOT_FRAMES.has(marker)) frame ??= segment;
    else if (marker === START_OF_SCAN) scans += 1;
    else if (marker === END_OF_IMAGE) endOfImage = segment.end;
    else if (marker === APP1 && startsWith(payload, 'Exif\0')) exif ??= payload.subarray(6);
    else if (marker === APP2 && startsWith(payload, 'ICC_PROFILE\0')) profileParts[payload[12]] = payload.subarray(14);
  }
  if (!frame || frame.payload.length < 6) return decodeRefusal('corrupt', 'no JPEG frame header');
  const [bitsPerChannel, heightHigh, heightLow, widthHigh, widthLow, components] = frame.payload;
  if (!READABLE_FRAMES.has(frame.marker) || bitsPerChannel !== 8) {
    return decodeRefusal('unsupportedFormat', `JPEG of a kind no camera writes (frame ${frame.marker.toString(16)}, ${bitsPerChannel} bit)`);
  }
  const channels = CHANNELS[components];
  if (!channels) return decodeRefusal('corrupt', `JPEG with ${components} components`);
  if (scans === 0 || endOfImage === null) return decodeRefusal('truncated', 'no JPEG end marker');
  const icc = profileParts.length > 0 ? new Uint8Array(Buffer.concat(profileParts.filter(Boolean))) : null;
  return {
    format: 'jpeg',
    widthPx: widthHigh * 256 + widthLow,
    heightPx: heightHigh * 256 + heightLow,
    channels,
    bitsPerChannel,
    mayHaveAlpha: false,
    icc,
    codePoints: null,
    exif,
    hasGainMap: hasSecondPictureWithGainMap(bytes, endOfImage),
    picture: bytes,
  };
}

/** Only the bytes after the first picture are searched: that is where a gain map lies (CIPA DC-007 multi-picture). */
function hasSecondPictureWithGainMap(bytes: Uint8Array, endOfImage: number): boolean {
  const rest = Buffer.from(bytes.buffer, bytes.byteOffset + endOfImage, bytes.length - endOfImage);
  return GAIN_MAP_WORDS.some((word) => rest.includes(word, 0, 'latin1'));
}
