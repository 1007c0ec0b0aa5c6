import type { RgbPicture } from '../photo/turn-upright';
import type { UprightPhoto } from '../photo/upright-photo';
import { wholeOf } from '../photo/whole-of';
import type { PointPx } from '../units';

/** A small grey copy of a photo, for searching. `shrink` camera pixels make one pixel of it, each way. */
export interface GreyImage {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly grey: Uint8Array;
  readonly shrink: number;
}

/**
 * A grey copy, `shrink` times smaller each way, its contrast stretched so that a dim photo can be searched too.
 *
 * Green stands for brightness: it is the sharpest channel of a phone photo (JPEG halves the resolution of colour).
 * 2 × 2 or 3 × 3 camera pixels in its middle are averaged for one grey pixel; that is enough against aliasing and costs little.
 *
 * @param photo the upright photo
 * @param shrink whole number ≥ 1
 * @returns `floor(width / shrink) × floor(height / shrink)` pixels
 * @throws RangeError when `shrink` is not a whole number ≥ 1, NotDecoded when only a part of the photo was decoded
 * @example shrinkToGrey(photo, 4).widthPx // 1008 for a photo 4032 pixels wide
 */
export function shrinkToGrey(photo: UprightPhoto, shrink: number): GreyImage {
  if (!Number.isInteger(shrink) || shrink < 1) throw new RangeError(`shrinkToGrey: shrink must be a whole number ≥ 1, received ${shrink}`);
  const widthPx = Math.floor(photo.widthPx / shrink);
  const heightPx = Math.floor(photo.heightPx / shrink);
  const grey = new Uint8Array(widthPx * heightPx);
  const taps = shrink % 2 === 0 ? 2 : Math.min(shrink, 3);
  const first = Math.floor((shrink - taps) / 2);
  const { srgb } = wholeOf(photo);
  const step = shrink * 3;
  const below = photo.widthPx * 3;
  for (let row = 0, i = 0; row < heightPx; row++) {
    let at = ((row * shrink + first) * photo.widthPx + first) * 3 + 1;
    if (taps === 2) {
      for (let column = 0; column < widthPx; column++, at += step) grey[i++] = (srgb[at] + srgb[at + 3] + srgb[at + below] + srgb[at + below + 3]) >> 2;
    } else {
      for (let column = 0; column < widthPx; column++, at += step) grey[i++] = meanOfTaps(srgb, at, taps, below);
    }
  }
  return { widthPx, heightPx, grey: stretched(grey), shrink };
}

/**
 * The same from a picture that a decoder has already made `shrink` times smaller.
 * @example greyCopy({ widthPx: 1008, heightPx: 756, srgb }, 4).shrink // 4
 */
export function greyCopy({ widthPx, heightPx, srgb }: RgbPicture, shrink: number): GreyImage {
  const grey = new Uint8Array(widthPx * heightPx);
  for (let i = 0; i < grey.length; i++) grey[i] = srgb[3 * i + 1];
  return { widthPx, heightPx, grey: stretched(grey), shrink };
}

function meanOfTaps(srgb: Uint8Array, at: number, taps: number, below: number): number {
  let sum = 0;
  for (let dr = 0; dr < taps; dr++) for (let dc = 0; dc < taps; dc++) sum += srgb[at + dr * below + dc * 3];
  return sum / (taps * taps);
}

/**
 * The same picture seen in a mirror (left and right exchanged).
 * @example mirror({ widthPx: 3, heightPx: 1, grey: Uint8Array.of(1, 2, 3), shrink: 1 }).grey // [3, 2, 1]
 */
export function mirror(image: GreyImage): GreyImage {
  const grey = new Uint8Array(image.grey.length);
  for (let row = 0; row < image.heightPx; row++) {
    const line = image.grey.subarray(row * image.widthPx, (row + 1) * image.widthPx);
    grey.set(line.slice().reverse(), row * image.widthPx);
  }
  return { ...image, grey };
}

/**
 * Where a point of the grey copy lies in the photo. Pixel centres are whole numbers in both.
 * @example toPhoto({ widthPx: 3, heightPx: 1, grey: Uint8Array.of(1, 2, 3), shrink: 4 }, { row: 0, column: 1 }) // { row: 1.5, column: 5.5 }
 */
export function toPhoto(image: GreyImage, point: PointPx): PointPx {
  return {
    row: (point.row + 0.5) * image.shrink - 0.5,
    column: (point.column + 0.5) * image.shrink - 0.5,
  };
}

const DIM_BELOW = 128;

/** Stretches a dim picture so that its 99.5th percentile reaches 230; leaves others untouched. */
function stretched(grey: Uint8Array): Uint8Array {
  const counts = new Uint32Array(256);
  for (let i = 0; i < grey.length; i += 7) counts[grey[i]]++;
  let above = (grey.length / 7) * 0.005;
  let bright = 255;
  while (bright > 1 && (above -= counts[bright]) > 0) bright--;
  if (bright >= DIM_BELOW) return grey;
  const table = Uint8Array.from({ length: 256 }, (_, code) => Math.min(255, Math.round((code * 230) / bright)));
  return grey.map((code) => table[code]);
}
