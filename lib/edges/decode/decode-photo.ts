/**
 * From the bytes of a file to an upright sRGB photo, or to a refusal. The order is the defence: what kind of file it is,
 * then its header, then the limits, and only then a decoder.
 */
import { createHash } from 'node:crypto';
import { decodeRefusal, type DecodeRefusal } from '../../photo/decode-refusals';
import type { CaptureFacts, UprightPhoto } from '../../photo/upright-photo';
import { DECODE_LIMITS, checkLimits, type DecodeLimits } from './check-limits';
import { classifyIccProfile } from './classify-icc-profile';
import { isRefused, type ContainerHeader } from './container-header';
import { decodeUpright, type Glance } from './decode-upright';
import { readExif, type ExifFacts } from './read-exif';
import { readHeader } from './read-header';

export type DecodeResult =
  | { readonly decoded: true; readonly photo: UprightPhoto }
  | { readonly decoded: false; readonly refusal: DecodeRefusal };

const ALREADY_UPRIGHT = 1;

type ColourSpace = CaptureFacts['colourSpace'];

/**
 * `await decodePhoto(bytes)` → `{ decoded: true, photo }`, or `{ decoded: false, refusal }`; a bad file never throws.
 * `glance` is shown a small grey copy first, and only the part that it asks for is decoded; only JPEG offers that.
 */
export async function decodePhoto(bytes: Uint8Array, glance: Glance | null = null, limits: DecodeLimits = DECODE_LIMITS): Promise<DecodeResult> {
  if (bytes.length === 0) return refused(decodeRefusal('emptyFile'));
  if (bytes.length > limits.maxFileBytes) return refused(decodeRefusal('fileTooLarge', `${bytes.length} bytes`));
  const header = readHeader(bytes);
  if (isRefused(header)) return refused(header);
  const limit = checkLimits(header.widthPx, header.heightPx, limits);
  if (limit) return refused(limit);

  const exif = readExif(header.exif);
  const colourSpace = colourSpaceOf(header, exif);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const orientation = header.format === 'heic' ? ALREADY_UPRIGHT : exif.orientationTag;
  const upright = await decodeUpright({ header, colourSpace, orientation }, glance);
  if ('sentence' in upright) return refused(upright);
  const { statesSrgb: _, ...facts } = exif;
  const capture = { ...facts, format: header.format, colourSpace, hasGainMap: header.hasGainMap };
  return { decoded: true, photo: { ...upright, sha256, capture } };
}

const refused = (refusal: DecodeRefusal): DecodeResult => ({ decoded: false, refusal });

function colourSpaceOf(header: ContainerHeader, exif: ExifFacts): ColourSpace {
  if (header.channels === 'cmyk') return 'cmyk';
  if (header.icc) return classifyIccProfile(header.icc);
  if (header.codePoints) return header.codePoints;
  return exif.statesSrgb ? 'srgb' : 'untagged';
}
