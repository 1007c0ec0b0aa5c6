import { convertPictureP3ToSrgb } from '../../photo/display-p3';
import { type RgbPicture, swapsSides } from '../../photo/turn-upright';
import type { UprightPhoto } from '../../photo/upright-photo';
import { decodeCopy } from './decode-copy';
import { decodePhoto } from './decode-photo';
import { encodeJpeg, type JpegOptions } from './encode-jpeg';

const SHRINK = 2;
/** Code values are sRGB already, or one matrix makes them so. */
const MATRIX_SPACES: ReadonlySet<string> = new Set(['srgb', 'untagged', 'display-p3']);

/**
 * The whole of a photo, small, for looking at; of the photo itself perhaps only a part was decoded for measuring.
 * `await encodeView(file, analysis.photo, { maxLongEdgePx: 1600, quality: 82 })` → the bytes of a JPEG file.
 */
export async function encodeView(file: Uint8Array, photo: UprightPhoto, options: JpegOptions): Promise<Uint8Array> {
  const picture = photo.part ? ((await smallerCopy(file, photo, options.maxLongEdgePx)) ?? (await decodeAgain(file))) : photo;
  return encodeJpeg(picture, options);
}

/** Half of it each way, where that is enough. Other colour spaces need the colour engine, and so the whole decode. */
async function smallerCopy(file: Uint8Array, { widthPx, heightPx, capture }: UprightPhoto, longEdgePx: number): Promise<RgbPicture | null> {
  const { colourSpace, orientationTag } = capture;
  if (!MATRIX_SPACES.has(colourSpace) || Math.max(widthPx, heightPx) / SHRINK < longEdgePx) return null;
  const stored = swapsSides(orientationTag) ? { widthPx: heightPx, heightPx: widthPx } : { widthPx, heightPx };
  const copy = await decodeCopy(file, stored, SHRINK, orientationTag);
  if (!copy) return null;
  return colourSpace === 'display-p3' ? convertPictureP3ToSrgb(copy) : copy;
}

async function decodeAgain(file: Uint8Array): Promise<UprightPhoto> {
  const decoded = await decodePhoto(file);
  if (!decoded.decoded) throw new Error(`A photo that was measured cannot be read any more: ${decoded.refusal.id}`);
  return decoded.photo;
}
