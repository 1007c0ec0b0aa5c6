/**
 * From the bytes of a file to an upright sRGB photo, or to a refusal. The order is the defence: what kind of file it is,
 * then its header, then the limits, and only then a decoder.
 */
import { createHash } from 'node:crypto';
import { decodeRefusal, type DecodeRefusal } from '../../photo/decode-refusals';
import { convertPictureP3ToSrgb } from '../../photo/display-p3';
import { turnUpright, type RgbPicture } from '../../photo/turn-upright';
import type { CaptureFacts, UprightPhoto } from '../../photo/upright-photo';
import { DECODE_LIMITS, checkLimits, type DecodeLimits } from './check-limits';
import { classifyIccProfile } from './classify-icc-profile';
import { isRefused, type ContainerHeader } from './container-header';
import { decodePixels } from './decode-pixels';
import { readExif, type ExifFacts } from './read-exif';
import { readHeader } from './read-header';

export type DecodeResult =
  | { readonly decoded: true; readonly photo: UprightPhoto }
  | { readonly decoded: false; readonly refusal: DecodeRefusal };

type ColourSpace = CaptureFacts['colourSpace'];

/** `await decodePhoto(bytes)` → `{ decoded: true, photo }`, or `{ decoded: false, refusal }`; a bad file never throws. */
export async function decodePhoto(bytes: Uint8Array, limits: DecodeLimits = DECODE_LIMITS): Promise<DecodeResult> {
  if (bytes.length === 0) return refused(decodeRefusal('emptyFile'));
  if (bytes.length > limits.maxFileBytes) return refused(decodeRefusal('fileTooLarge', `${bytes.length} bytes`));
  const header = readHeader(bytes);
  if (isRefused(header)) return refused(header);
  const limit = checkLimits(header.widthPx, header.heightPx, limits);
  if (limit) return refused(limit);

  const exif = readExif(header.exif);
  const colourSpace = colourSpaceOf(header, exif);
  const stored = await decodeStored(bytes, header, colourSpace);
  if ('sentence' in stored) return refused(stored);
  if (stored.widthPx !== header.widthPx || stored.heightPx !== header.heightPx) {
    return refused(decodeRefusal('corrupt', 'the picture has another size than its header says'));
  }
  const upright = turnUpright(stored, exif.orientationTag);
  const { statesSrgb: _, ...facts } = exif;
  const capture = { ...facts, format: header.format, colourSpace, hasGainMap: header.hasGainMap };
  return { decoded: true, photo: { ...upright, sha256: createHash('sha256').update(bytes).digest('hex'), capture } };
}

const refused = (refusal: DecodeRefusal): DecodeResult => ({ decoded: false, refusal });

function colourSpaceOf(header: ContainerHeader, exif: ExifFacts): ColourSpace {
  if (header.channels === 'cmyk') return 'cmyk';
  if (header.icc) return classifyIccProfile(header.icc);
  if (header.codePoints) return header.codePoints;
  return exif.statesSrgb ? 'srgb' : 'untagged';
}

async function decodeStored(
  bytes: Uint8Array,
  header: ContainerHeader,
  colourSpace: ColourSpace,
): Promise<RgbPicture | DecodeRefusal> {
  // The colour engine costs more than the whole decode: it is left out where the code values are sRGB already, and
  // where one matrix does the same.
  const ownConversion = colourSpace === 'display-p3' && header.channels === 'rgb' && header.bitsPerChannel === 8;
  const ignoreIcc = ownConversion || colourSpace === 'srgb';
  const picture = await decodePixels(bytes, { ignoreIcc, flatten: header.mayHaveAlpha });
  return ownConversion && !('sentence' in picture) ? convertPictureP3ToSrgb(picture) : picture;
}
