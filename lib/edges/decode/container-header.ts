/**
 * What is read from a file before any decoder sees it: enough to apply the limits, to choose the path, and to know what
 * the code values mean.
 */
import type { DecodeRefusal } from '../../photo/decode-refusals';

export interface ContainerHeader {
  readonly format: 'jpeg' | 'png' | 'webp' | 'heic';
  /** As stored, before any orientation. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly channels: 'grey' | 'rgb' | 'cmyk';
  readonly bitsPerChannel: number;
  readonly mayHaveAlpha: boolean;
  /** The embedded colour profile as bytes, or what the file says in its own code points instead of one. */
  readonly icc: Uint8Array | null;
  readonly codePoints: 'srgb' | 'display-p3' | null;
  /** The TIFF block of the EXIF data, without the container's own prefix. */
  readonly exif: Uint8Array | null;
  readonly hasGainMap: boolean;
}

export type HeaderResult = ContainerHeader | DecodeRefusal;

/** Has the header been refused? `isRefused(decodeRefusal('truncated'))` is true. */
export const isRefused = (result: HeaderResult): result is DecodeRefusal => 'sentence' in result;
