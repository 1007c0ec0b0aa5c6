import type { PartPx } from './part-of';
import { swapsSides } from './turn-upright';

/** Orientations of which rows, or columns, of the stored picture run the other way than the upright one's (TIFF 6.0, tag Orientation). */
const ROWS_REVERSED: ReadonlySet<number> = new Set([3, 4, 6, 7]);
const COLUMNS_REVERSED: ReadonlySet<number> = new Set([2, 3, 7, 8]);

/**
 * Where a part of the upright picture lies in the stored one: `turnUpright` of what is there gives the part.
 * @param part in the upright picture
 * @param stored size of the picture as it lies in the file, pixels
 * @param orientation EXIF orientation, 1…8
 * @returns the same part as stored
 * @example storedPart({ left: 0, top: 0, widthPx: 2, heightPx: 1 }, { widthPx: 30, heightPx: 40 }, 6) // { left: 0, top: 38, widthPx: 1, heightPx: 2 }
 */
export function storedPart(part: PartPx, stored: { readonly widthPx: number; readonly heightPx: number }, orientation: number): PartPx {
  const { left, top, widthPx, heightPx } = part;
  const turned = swapsSides(orientation) ? { left: top, top: left, widthPx: heightPx, heightPx: widthPx } : { left, top, widthPx, heightPx };
  return {
    ...turned,
    left: COLUMNS_REVERSED.has(orientation) ? stored.widthPx - turned.left - turned.widthPx : turned.left,
    top: ROWS_REVERSED.has(orientation) ? stored.heightPx - turned.top - turned.heightPx : turned.top,
  };
}
