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
  /** The embedded colour profile. */
  readonly icc: Uint8Array | null;
  /** What the file says in code points (ITU-T H.273) instead of, or above, a profile. */
  readonly codePoints: 'srgb' | 'display-p3' | null;
  /** The TIFF block of the EXIF data, without the container's own prefix. */
  readonly exif: Uint8Array | null;
  readonly hasGainMap: boolean;
  /** What is handed to the decoder: the file, or the file without the parts that a decoder has no business with. */
  readonly picture: Uint8Array;
}

export type HeaderResult = ContainerHeader | DecodeRefusal;

/** Has the header been refused? `isRefused(decodeRefusal('truncated'))` is true. */
export const isRefused = (result: HeaderResult): result is DecodeRefusal => 'sentence' in result;
