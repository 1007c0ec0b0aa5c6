/** Chooses the header reader by content. Anything that is not one of the four formats is refused here. */
import { decodeRefusal } from '../../photo/decode-refusals';
import type { ContainerHeader, HeaderResult } from './container-header';
import { readJpegHeader } from './read-jpeg-header';
import { sniffFormat } from './sniff-format';

const READERS: Readonly<Partial<Record<ContainerHeader['format'], (bytes: Uint8Array) => HeaderResult>>> = {
  jpeg: readJpegHeader,
};

/** `readHeader(bytes)` → size, channels, profile and EXIF block, or a refusal. */
export function readHeader(bytes: Uint8Array): HeaderResult {
  const sniffed = sniffFormat(bytes);
  if (!sniffed.supported) return decodeRefusal('unsupportedFormat', `looks like ${sniffed.looksLike}`);
  return READERS[sniffed.format]?.(bytes) ?? decodeRefusal('unsupportedFormat', sniffed.format);
}
