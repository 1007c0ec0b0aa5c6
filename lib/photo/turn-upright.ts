/** Edge of the square tiles that are turned at once: 64 × 64 × 3 bytes stay in the first-level cache (measured). */
const TILE_PX = 64;
const CHANNELS = 3;

/** Where the upright picture starts in the stored one, and how far one column and one row lead there, in pixels. */
interface Walk {
  readonly first: number;
  readonly perColumn: number;
  readonly perRow: number;
}

/** The eight cases of the EXIF tag 0x0112 (CIPA DC-008 / TIFF 6.0): which stored side is the top, which the left. */
function walkFor(orientation: number, width: number, height: number): Walk {
  const end = width * height - 1;
  const cases: Readonly<Record<number, Walk>> = {
    1: { first: 0, perColumn: 1, perRow: width },
    2: { first: width - 1, perColumn: -1, perRow: width },
    3: { first: end, perColumn: -1, perRow: -width },
    4: { first: end - (width - 1), perColumn: 1, perRow: -width },
    5: { first: 0, perColumn: width, perRow: 1 },
    6: { first: end - (width - 1), perColumn: -width, perRow: 1 },
    7: { first: end, perColumn: -width, perRow: -1 },
    8: { first: width - 1, perColumn: width, perRow: -1 },
  };
  const walk = cases[orientation];
  if (!walk) throw new RangeError(`turnUpright: the orientation is 1…8, received ${orientation}`);
  return walk;
}

/**
 * Does turning upright swap width and height?
 * @param orientation EXIF orientation, 1…8
 * @example swapsSides(6) // true
 */
export const swapsSides = (orientation: number): boolean => orientation >= 5;

export interface RgbPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Red, green, blue interleaved, row by row. */
  readonly srgb: Uint8Array;
}

/**
 * Turns and mirrors a stored picture so that it stands upright, by moving pixels only.
 * @param stored the picture as it lies in the file, RGB interleaved, any size
 * @param orientation EXIF orientation, 1…8; 1 gives back the same picture, untouched
 * @returns the upright picture; widths and heights are swapped for 5…8. Throws on any other orientation.
 * Source: TIFF 6.0 (Adobe, 1992), tag Orientation.
 * @example turnUpright({ widthPx: 2, heightPx: 1, srgb: Uint8Array.of(1, 1, 1, 2, 2, 2) }, 6).heightPx // 2
 */
export function turnUpright(stored: RgbPicture, orientation: number): RgbPicture {
  const { first, perColumn, perRow } = walkFor(orientation, stored.widthPx, stored.heightPx);
  if (orientation === 1) return stored;
  const swapped = swapsSides(orientation);
  const widthPx = swapped ? stored.heightPx : stored.widthPx;
  const heightPx = swapped ? stored.widthPx : stored.heightPx;
  const srgb = new Uint8Array(stored.srgb.length);
  for (let top = 0; top < heightPx; top += TILE_PX) {
    for (let left = 0; left < widthPx; left += TILE_PX) {
      const right = Math.min(widthPx, left + TILE_PX);
      for (let row = top; row < Math.min(heightPx, top + TILE_PX); row += 1) {
        let to = (row * widthPx + left) * CHANNELS;
        let from = (first + row * perRow + left * perColumn) * CHANNELS;
        for (let column = left; column < right; column += 1) {
          srgb[to] = stored.srgb[from];
          srgb[to + 1] = stored.srgb[from + 1];
          srgb[to + 2] = stored.srgb[from + 2];
          to += CHANNELS;
          from += perColumn * CHANNELS;
        }
      }
    }
  }
  return { widthPx, heightPx, srgb };
}
