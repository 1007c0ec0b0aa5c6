import { type RgbPicture, turnUpright } from '../../photo/turn-upright';
import { openPicture } from './open-picture';

interface SizePx {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** What a JPEG decoder gives by leaving out frequencies of its blocks of 8 × 8 (ITU-T T.81): a third of the work of a whole decode. */
const SHRINKS: readonly number[] = [2, 4, 8];

/**
 * A small upright copy of a JPEG, made without decoding the whole of it; code values in the file's own colour space. The
 * decoder has gone through all of the file and found nothing amiss: it stops at the first warning. Warnings that are only told
 * would not do, for the picture library hands them to whichever of several decodes ends first.
 *
 * @param jpeg the file
 * @param size as stored
 * @param shrink stored pixels for one of the copy, each way
 * @param orientation EXIF orientation, 1…8
 * @returns null where the decoder offers no such shrink or finds anything amiss: the whole decode says what
 * @example await decodeCopy(bytes, { widthPx: 4032, heightPx: 3024 }, 4, 1) // 1008 × 756 pixels of a 12-megapixel photo
 */
export async function decodeCopy(jpeg: Uint8Array, size: SizePx, shrink: number, orientation: number): Promise<RgbPicture | null> {
  const { widthPx, heightPx } = size;
  // A rest at the right or lower edge would move the copy against the photo when it is turned upright.
  if (!SHRINKS.includes(shrink) || widthPx % shrink !== 0 || heightPx % shrink !== 0) return null;
  try {
    const { data, info } = await openPicture(jpeg, { failOn: 'warning', ignoreIcc: true })
      .resize({ width: widthPx / shrink })
      .raw()
      .toBuffer({ resolveWithObject: true });
    if (info.channels !== 3) return null;
    return turnUpright({ widthPx: info.width, heightPx: info.height, srgb: data }, orientation);
  } catch {
    return null;
  }
}
