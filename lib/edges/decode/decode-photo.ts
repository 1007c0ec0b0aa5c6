/**
 * From the bytes of a file to an upright sRGB photo, or to a refusal. The order is the defence: what kind of file it is,
 * then its header, then the limits, and only then a decoder.
 */
import { createHash } from 'node:crypto';
import { decodeRefusal, type DecodeRefusal } from '../../photo/decode-refusals';
import { convertPictureP3ToSrgb } from '../../photo/display-p3';
import type { PartPx } from '../../photo/part-of';
import { storedPart } from '../../photo/stored-part';
import { swapsSides, turnUpright, type RgbPicture } from '../../photo/turn-upright';
import type { CaptureFacts, UprightPhoto } from '../../photo/upright-photo';
import { type GreyImage, greyCopy } from '../../rectify/grey-image';
import { searchShrink } from '../../rectify/search-shrink';
import { DECODE_LIMITS, checkLimits, type DecodeLimits } from './check-limits';
import { classifyIccProfile } from './classify-icc-profile';
import { isRefused, type ContainerHeader } from './container-header';
import { decodeCopy } from './decode-copy';
import { decodeHeic } from './decode-heic';
import { decodePixels } from './decode-pixels';
import { readExif, type ExifFacts } from './read-exif';
import { readHeader } from './read-header';

export type DecodeResult =
  | { readonly decoded: true; readonly photo: UprightPhoto }
  | { readonly decoded: false; readonly refusal: DecodeRefusal };

/** Sees a small grey copy of a photo before the photo itself is there, and says which part of it is needed; null is all of it. */
export type Glance = (copy: GreyImage) => PartPx | null;

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
  const part = glance && header.format === 'jpeg' ? await askedFor(header, orientation, glance) : null;
  const upright = (part && (await decodePart(header, colourSpace, orientation, part))) ?? (await decodeWhole(header, colourSpace, orientation));
  if ('sentence' in upright) return refused(upright);
  const { statesSrgb: _, ...facts } = exif;
  const capture = { ...facts, format: header.format, colourSpace, hasGainMap: header.hasGainMap };
  return { decoded: true, photo: { ...upright, sha256, capture } };
}

/** A part is only read of a file that is sound as a whole: what is wrong with the others is found by decoding all of them. */
async function askedFor({ picture, widthPx, heightPx, channels }: ContainerHeader, orientation: number, glance: Glance): Promise<PartPx | null> {
  const shrink = searchShrink(Math.max(widthPx, heightPx));
  const copy = await decodeCopy(picture, { widthPx, heightPx }, shrink, orientation);
  const part = copy && glance(greyCopy(copy.picture, shrink));
  return copy?.isSound && channels === 'rgb' ? part : null;
}

async function decodeWhole(header: ContainerHeader, colourSpace: ColourSpace, orientation: number): Promise<RgbPicture | DecodeRefusal> {
  const stored = await decodeStored(header, colourSpace);
  if ('sentence' in stored) return stored;
  return hasStatedSize(stored, header) ? turnUpright(stored, orientation) : decodeRefusal('corrupt', 'another size than the header says');
}

/** Null where the decoder finds anything amiss after all. */
async function decodePart(header: ContainerHeader, colourSpace: ColourSpace, orientation: number, part: PartPx): Promise<Pick<UprightPhoto, 'widthPx' | 'heightPx' | 'srgb' | 'part'> | null> {
  const cut = storedPart(part, header, orientation);
  const stored = await decodeStored(header, colourSpace, cut);
  if ('sentence' in stored || stored.widthPx !== cut.widthPx || stored.heightPx !== cut.heightPx) return null;
  const { srgb } = turnUpright(stored, orientation);
  const [widthPx, heightPx] = swapsSides(orientation) ? [header.heightPx, header.widthPx] : [header.widthPx, header.heightPx];
  return { widthPx, heightPx, srgb, part };
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
async function decodeStored(header: ContainerHeader, colourSpace: ColourSpace, part?: PartPx): Promise<RgbPicture | DecodeRefusal> {
  const { format, channels, bitsPerChannel, picture, mayHaveAlpha } = header;
  if (format === 'heic') {
    // Pixels without their file cannot be given to the colour engine, so only what the matrix can do is read.
    if (colourSpace === 'other-profile' || colourSpace === 'cmyk') return decodeRefusal('unsupportedColour', colourSpace);
    return inSrgb(await decodeHeic(header), colourSpace);
  }
  const wide = bitsPerChannel === 16;
  const ignoreIcc = colourSpace === 'srgb' || (colourSpace === 'display-p3' && channels === 'rgb');
  const pixels = await decodePixels(picture, { ignoreIcc, flatten: mayHaveAlpha, part });
  // Pictures of 16 bits leave the colour engine in Display P3, whatever profile they came with.
  return inSrgb(pixels, wide && channels === 'rgb' && colourSpace === 'other-profile' ? 'display-p3' : colourSpace);
}

function inSrgb(pixels: RgbPicture | DecodeRefusal, colourSpace: ColourSpace): RgbPicture | DecodeRefusal {
  return colourSpace === 'display-p3' && !('sentence' in pixels) ? convertPictureP3ToSrgb(pixels) : pixels;
}
