import { NotDecoded } from './not-decoded';
import type { PartlyDecoded } from './part-of';

/**
 * What there is at a place that lies outside of the decoded pixels.
 * @param picture decoded whole or in part
 * @param row of the whole picture, pixels, may be fractional
 * @param column the same across
 * @returns null where the picture has ended
 * @throws NotDecoded where the picture goes on and only a part of it was decoded
 * @example nothingAt({ widthPx: 4, heightPx: 3 }, 3, 0) // null
 */
export function nothingAt({ part, widthPx, heightPx }: PartlyDecoded, row: number, column: number): null {
  if (part && row >= 0 && column >= 0 && row < heightPx && column < widthPx) throw new NotDecoded(`row ${row}, column ${column}`);
  return null;
}
