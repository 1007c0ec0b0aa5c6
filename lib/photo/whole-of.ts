import { NotDecoded } from './not-decoded';
import type { PartlyDecoded } from './part-of';

/**
 * A picture for steps that look all over it.
 * @param picture decoded whole or in part
 * @returns the same picture
 * @throws NotDecoded where only a part of it was decoded
 * @example wholeOf({ widthPx: 4, heightPx: 3 }).widthPx // 4
 */
export function wholeOf<Picture extends PartlyDecoded>(picture: Picture): Picture {
  if (picture.part) throw new NotDecoded('the whole picture');
  return picture;
}
