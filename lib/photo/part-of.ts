/** A rectangle of whole pixels in an upright picture. */
export interface PartPx {
  readonly left: number;
  readonly top: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A picture of which perhaps only a part was decoded: `srgb` then holds that part's pixels, and places are still those of the whole. */
export interface PartlyDecoded {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly part?: PartPx;
}

/**
 * Which part of a picture its pixels are.
 * @param picture decoded whole or in part; sizes in pixels
 * @returns the part that was decoded, or a rectangle as large as the picture
 * @example partOf({ widthPx: 4, heightPx: 3 }) // { left: 0, top: 0, widthPx: 4, heightPx: 3 }
 */
export function partOf({ part, widthPx, heightPx }: PartlyDecoded): PartPx {
  return part ?? { left: 0, top: 0, widthPx, heightPx };
}
