/**
 * From the bytes of a file to an upright sRGB photo, or to a refusal. The order is the defence: what kind of file it is,
 * then its header, then the limits, and only then a decoder.
 */
import { createHash } from 'node:crypto';
import { decodeRefusal, type DecodeRefusal } from '../../photo/decode-refusals';
import { convertPictureP3ToSrgb } from '../../photo/display-p3';
import { turnUpright, type RgbPicture } from '../../photo/turn-upright';
import type { CaptureFacts, UprightPhoto } from '../../photo/upright-photo';
import type { GreyImage } from '../../rectify/grey-image';
import { searchShrink } from '../../rectify/search-shrink';
import { DECODE_LIMITS, checkLimits, type DecodeLimits } from './check-limits';
import { classifyIccProfile } from './classify-icc-profile';
import { isRefused, type ContainerHeader } from './container-header';
import { decodeGreyCopy } from './decode-grey-copy';
import { decodeHeic } from './decode-heic';
import { decodePixels } from './decode-pixels';
import { readExif, type ExifFacts } from './read-exif';
import { readHeader } from './read-header';

export type DecodeResult =
  | { readonly decoded: true; readonly photo: UprightPhoto }
  | { readonly decoded: false; readonly refusal: DecodeRefusal };

/** Sees a small grey copy of a photo before the photo itself is there. */
export type Glance = (copy: GreyImage) => void;

const ALREADY_UPRIGHT = 1;

type ColourSpace = CaptureFacts['colourSpace'];

/**
 * `await decodePhoto(bytes)` → `{ decoded: true, photo }`, or `{ decoded: false, refusal }`; a bad file never throws.
 * `glance` is shown a small grey copy while the whole picture is still being decoded; only JPEG offers one.
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
  const decoding = decodeStored(header, colourSpace);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const orientation = header.format === 'heic' ? ALREADY_UPRIGHT : exif.orientationTag;
  if (glance && header.format === 'jpeg') await showCopy(header, orientation, glance);
  const stored = await decoding;
  if ('sentence' in stored) return refused(stored);
  if (!hasStatedSize(stored, header)) return refused(decodeRefusal('corrupt', 'another size than the header says'));
  const upright = turnUpright(stored, orientation);
  const { statesSrgb: _, ...facts } = exif;
  const capture = { ...facts, format: header.format, colourSpace, hasGainMap: header.hasGainMap };
  return { decoded: true, photo: { ...upright, sha256, capture } };
}

async function showCopy({ picture, widthPx, heightPx }: ContainerHeader, orientation: number, glance: Glance): Promise<void> {
  const copy = await decodeGreyCopy(picture, { widthPx, heightPx }, searchShrink(Math.max(widthPx, heightPx)), orientation);
  if (copy) glance(copy);
}

/** A HEIC turns and crops itself: its pixels may differ from the stored size, which has been held to the limits. */
function hasStatedSize(stored: RgbPicture, header: ContainerHeader): boolean {
  return header.format === 'heic' || (stored.widthPx === header.widthPx && stored.heightPx === header.heightPx);
}

const refused = (refusal: DecodeRefusal): DecodeResult => ({ decoded: false, refusal });

function colourSpaceOf(header: ContainerHeader, exif: ExifFacts): ColourSpace {
  if (header.channels === 'cmyk') return 'cmyk';
  if (header.icc) return classifyIccProfile(header.icc);
  if (header.codePoints) return header.codePoints;
  return exif.statesSrgb ? 'srgb' : 'untagged';
}

/**
 * The stored picture in sRGB. The colour engine costs more than the whole decode of a JPEG: it is left out where the
 * code values are sRGB already, and where one matrix does the same.
 */
async function decodeStored(header: ContainerHeader, colourSpace: ColourSpace): Promise<RgbPicture | DecodeRefusal> {
  const { format, channels, bitsPerChannel, picture, mayHaveAlpha } = header;
  if (format === 'heic') {
    // Pixels without their file cannot be given to the colour engine, so only what the matrix can do is read.
    if (colourSpace === 'other-profile' || colourSpace === 'cmyk') return decodeRefusal('unsupportedColour', colourSpace);
    return inSrgb(await decodeHeic(header), colourSpace);
  }
  const wide = bitsPerChannel === 16;
  const ignoreIcc = colourSpace === 'srgb' || (colourSpace === 'display-p3' && channels === 'rgb');
  const pixels = await decodePixels(picture, { ignoreIcc, flatten: mayHaveAlpha });
  // Pictures of 16 bits leave the colour engine in Display P3, whatever profile they came with.
  return inSrgb(pixels, wide && channels === 'rgb' && colourSpace === 'other-profile' ? 'display-p3' : colourSpace);
}

function inSrgb(pixels: RgbPicture | DecodeRefusal, colourSpace: ColourSpace): RgbPicture | DecodeRefusal {
  return colourSpace === 'display-p3' && !('sentence' in pixels) ? convertPictureP3ToSrgb(pixels) : pixels;
}
