import type { PartPx } from './part-of';

/** Of each side of the photo: whether it was drawn or taken is told by its grain, and a third of the picture has enough of it to tell. */
const LEAST_SHARE = 0.6;

interface SizePx {
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * A part of a photo, made large enough to tell by its grain whether the photo was drawn.
 * @param part pixels of the photo
 * @param photo its size, pixels
 * @returns a part of the photo that holds the given one and at least 0.6 of each side
 * @example widenPart({ left: 0, top: 40, widthPx: 20, heightPx: 20 }, { widthPx: 100, heightPx: 100 }) // { left: 0, top: 20, widthPx: 60, heightPx: 60 }
 */
export function widenPart({ left, top, widthPx, heightPx }: PartPx, photo: SizePx): PartPx {
  const across = widened(left, widthPx, photo.widthPx);
  const down = widened(top, heightPx, photo.heightPx);
  return { left: across.from, top: down.from, widthPx: across.lengthPx, heightPx: down.lengthPx };
}

function widened(from: number, lengthPx: number, sidePx: number): { from: number; lengthPx: number } {
  const wide = Math.max(lengthPx, Math.ceil(LEAST_SHARE * sidePx));
  const centred = Math.floor(from + (lengthPx - wide) / 2);
  return { from: Math.min(Math.max(0, centred), sidePx - wide), lengthPx: wide };
}
