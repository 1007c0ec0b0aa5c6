/** Chooses the header reader by content. Anything that is not one of the four formats is refused here. */
import { decodeRefusal } from '../../photo/decode-refusals';
import type { HeaderResult } from './container-header';
import { readHeicHeader } from './read-heic-header';
import { readJpegHeader } from './read-jpeg-header';
import { readPngHeader } from './read-png-header';
import { readWebpHeader } from './read-webp-header';
import { sniffFormat } from './sniff-format';

const READERS = { jpeg: readJpegHeader, png: readPngHeader, webp: readWebpHeader, heic: readHeicHeader } as const;

/** `readHeader(bytes)` → size, channels, profile and EXIF block, or a refusal. */
export function readHeader(bytes: Uint8Array): HeaderResult {
  const sniffed = sniffFormat(bytes);
  if (!sniffed.supported) return decodeRefusal('unsupportedFormat', `looks like ${sniffed.looksLike}`);
  return READERS[sniffed.format](bytes);
}
