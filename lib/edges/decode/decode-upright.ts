/** Upright pixels in sRGB: of the whole picture, or of the part that a glance at a small copy asks for. */
import { decodeRefusal, type DecodeRefusal } from '../../photo/decode-refusals';
import { convertPictureP3ToSrgb } from '../../photo/display-p3';
import type { PartPx } from '../../photo/part-of';
import { storedPart } from '../../photo/stored-part';
import { swapsSides, turnUpright, type RgbPicture } from '../../photo/turn-upright';
import type { CaptureFacts, UprightPhoto } from '../../photo/upright-photo';
import { widenPart } from '../../photo/widen-part';
import { type GreyImage, greyCopy } from '../../rectify/grey-image';
import { searchShrink } from '../../rectify/search-shrink';
import type { ContainerHeader } from './container-header';
import { decodeCopy } from './decode-copy';
import { decodeHeic } from './decode-heic';
import { decodePixels } from './decode-pixels';

/** Sees a small grey copy of a photo before the photo itself is there, and says which part of it is needed; null is all of it. */
export type Glance = (copy: GreyImage) => PartPx | null;

export type Pixels = Pick<UprightPhoto, 'widthPx' | 'heightPx' | 'srgb' | 'part'>;

type ColourSpace = CaptureFacts['colourSpace'];

/** A file as its header describes it. */
export interface StoredPicture {
  readonly header: ContainerHeader;
  readonly colourSpace: ColourSpace;
  /** EXIF orientation, 1…8, that is still to be applied. */
  readonly orientation: number;
}

/** Of the picture. A part as large as this saves nothing. */
const MOST_AREA_SHARE = 0.7;

/** `await decodeUpright({ header, colourSpace: 'srgb', orientation: 6 }, null)` → all of it. */
export async function decodeUpright(stored: StoredPicture, glance: Glance | null): Promise<Pixels | DecodeRefusal> {
  const part = glance && stored.header.format === 'jpeg' ? await decodeNeeded(stored, glance) : null;
  return part ?? decodeWhole(stored);
}

/** Null where all of the picture is needed, or the decoder finds anything amiss: decoding all of it tells what. */
async function decodeNeeded(stored: StoredPicture, glance: Glance): Promise<Pixels | null> {
  const photo = uprightSize(stored);
  // A card is held to the middle: that is decoded while the copy is still being looked at.
  const middle = widenPart({ left: photo.widthPx / 2, top: photo.heightPx / 2, widthPx: 0, heightPx: 0 }, photo);
  const decoding = decodePart(stored, middle);
  const needed = await askedFor(stored, glance);
  if (!needed) return null;
  if (holds(middle, needed)) return decoding;
  const part = widenPart(needed, photo);
  return part.widthPx * part.heightPx > MOST_AREA_SHARE * photo.widthPx * photo.heightPx ? null : decodePart(stored, part);
}

function uprightSize({ header: { widthPx, heightPx }, orientation }: StoredPicture): { widthPx: number; heightPx: number } {
  return swapsSides(orientation) ? { widthPx: heightPx, heightPx: widthPx } : { widthPx, heightPx };
}

/** A part is only read of a file that is sound as a whole: what is wrong with the others is found by decoding all of them. */
async function askedFor({ header, orientation }: StoredPicture, glance: Glance): Promise<PartPx | null> {
  const shrink = searchShrink(Math.max(header.widthPx, header.heightPx));
  const copy = await decodeCopy(header.picture, header, shrink, orientation);
  return copy && header.channels === 'rgb' ? glance(greyCopy(copy, shrink)) : null;
}

function holds(whole: PartPx, part: PartPx): boolean {
  const [right, bottom] = [whole.left + whole.widthPx, whole.top + whole.heightPx];
  return part.left >= whole.left && part.top >= whole.top && part.left + part.widthPx <= right && part.top + part.heightPx <= bottom;
}

async function decodePart(stored: StoredPicture, part: PartPx): Promise<Pixels | null> {
  const cut = storedPart(part, stored.header, stored.orientation);
  const picture = await decodeStored(stored, cut);
  if ('sentence' in picture || picture.widthPx !== cut.widthPx || picture.heightPx !== cut.heightPx) return null;
  return { ...uprightSize(stored), srgb: turnUpright(picture, stored.orientation).srgb, part };
}

async function decodeWhole(stored: StoredPicture): Promise<RgbPicture | DecodeRefusal> {
  const picture = await decodeStored(stored);
  if ('sentence' in picture) return picture;
  return hasStatedSize(picture, stored.header) ? turnUpright(picture, stored.orientation) : decodeRefusal('corrupt', 'another size than the header says');
}

/** A HEIC turns and crops itself: its pixels may differ from the stored size, which has been held to the limits. */
function hasStatedSize(stored: RgbPicture, header: ContainerHeader): boolean {
  return header.format === 'heic' || (stored.widthPx === header.widthPx && stored.heightPx === header.heightPx);
}

/**
 * The stored picture in sRGB. The colour engine costs more than the whole decode of a JPEG: it is left out where the
 * code values are sRGB already, and where one matrix does the same.
 */
async function decodeStored({ header, colourSpace }: StoredPicture, part?: PartPx): Promise<RgbPicture | DecodeRefusal> {
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
