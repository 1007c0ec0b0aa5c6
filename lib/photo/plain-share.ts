import { EDGE_RANGE, GRAIN_SQUARES_ALONG, GRAIN_SQUARE_PX, MIN_GRAIN_SHARE, PLANE_RESIDUAL } from './constants';
import { partOf, type PartPx } from './part-of';
import type { RgbPicture } from './turn-upright';

type SquareKind = 'clipped' | 'plain' | 'grainy' | 'edge';

/**
 * How much of the picture is as plain as only a drawing can be: of the squares that could show grain, the share that
 * show none (one exact colour, or an exact gradient). Squares with an edge, and clipped ones, say nothing.
 * @param picture sRGB code values, RGB interleaved, at the resolution at which it was taken; any size from 16 × 16 px; of a picture
 *   of which only a part was decoded, the most it can be is told: what is not seen may all be plain
 * @returns 0…1; 0 when no square says anything. Where almost no grain is found anywhere, clipped squares count as plain.
 * Assumes: a camera's noise survives its own smoothing and JPEG in most of the picture. Source: own reasoning.
 * @example plainShare({ widthPx: 16, heightPx: 16, srgb: new Uint8Array(768).fill(90) }) // 1
 */
export function plainShare(picture: RgbPicture & { readonly part?: PartPx }): number {
  const counts: Record<SquareKind, number> = { clipped: 0, plain: 0, grainy: 0, edge: 0 };
  const across = gridStarts(picture.widthPx);
  const down = gridStarts(picture.heightPx);
  const part = partOf(picture);
  const decoded = { ...part, srgb: picture.srgb };
  for (const top of down) {
    for (const left of across) counts[isIn(part, top, left) ? squareKind(decoded, top - part.top, left - part.left) : 'plain'] += 1;
  }
  const all = across.length * down.length;
  const plain = counts.plain + (counts.grainy < MIN_GRAIN_SHARE * all ? counts.clipped : 0);
  const telling = plain + counts.grainy;
  return telling === 0 ? 0 : plain / telling;
}

/** First pixels of at most 40 squares, spread evenly and on the grid of 16. */
function gridStarts(lengthPx: number): number[] {
  const squares = Math.floor(lengthPx / GRAIN_SQUARE_PX);
  const taken = Math.min(squares, GRAIN_SQUARES_ALONG);
  return Array.from({ length: taken }, (_, i) => GRAIN_SQUARE_PX * Math.floor(((i + 0.5) * squares) / taken));
}

function isIn({ left, top, widthPx, heightPx }: PartPx, squareTop: number, squareLeft: number): boolean {
  const [right, bottom] = [squareLeft + GRAIN_SQUARE_PX, squareTop + GRAIN_SQUARE_PX];
  return squareLeft >= left && squareTop >= top && right <= left + widthPx && bottom <= top + heightPx;
}

function squareKind(picture: RgbPicture, top: number, left: number): SquareKind {
  const red = codeRange(picture, top, left, 0);
  const green = codeRange(picture, top, left, 1);
  const blue = codeRange(picture, top, left, 2);
  const range = Math.max(red.highest - red.lowest, green.highest - green.lowest, blue.highest - blue.lowest);
  if (range > EDGE_RANGE) return 'edge';
  if (range > 0) return planeResidual(picture, top, left) <= PLANE_RESIDUAL ? 'plain' : 'grainy';
  const white = Math.min(red.lowest, green.lowest, blue.lowest) === 255;
  const black = Math.max(red.highest, green.highest, blue.highest) === 0;
  return white || black ? 'clipped' : 'plain';
}

function codeRange({ srgb, widthPx }: RgbPicture, top: number, left: number, channel: number) {
  let lowest = 255;
  let highest = 0;
  for (let row = top; row < top + GRAIN_SQUARE_PX; row += 1) {
    const start = (row * widthPx + left) * 3 + channel;
    for (let i = start; i < start + GRAIN_SQUARE_PX * 3; i += 3) {
      const code = srgb[i];
      if (code < lowest) lowest = code;
      if (code > highest) highest = code;
    }
  }
  return { lowest, highest };
}

const MIDDLE = (GRAIN_SQUARE_PX - 1) / 2;
const PIXELS = GRAIN_SQUARE_PX ** 2;
/** Sum of squared distances from the middle, along one side, over the square: n · n (n² − 1) / 12. */
const SPREAD = (PIXELS * (PIXELS - 1)) / 12;

/** Largest distance of green, the channel with the most of the light in it, from the plane that fits it best. */
function planeResidual({ srgb, widthPx }: RgbPicture, top: number, left: number): number {
  const start = (top * widthPx + left) * 3 + 1;
  let [sum, sumAcross, sumDown] = [0, 0, 0];
  for (let row = 0; row < GRAIN_SQUARE_PX; row += 1) {
    for (let column = 0; column < GRAIN_SQUARE_PX; column += 1) {
      const code = srgb[start + (row * widthPx + column) * 3];
      sum += code;
      sumAcross += code * (column - MIDDLE);
      sumDown += code * (row - MIDDLE);
    }
  }
  let largest = 0;
  for (let row = 0; row < GRAIN_SQUARE_PX; row += 1) {
    for (let column = 0; column < GRAIN_SQUARE_PX; column += 1) {
      const plane = sum / PIXELS + (sumAcross * (column - MIDDLE) + sumDown * (row - MIDDLE)) / SPREAD;
      largest = Math.max(largest, Math.abs(srgb[start + (row * widthPx + column) * 3] - plane));
    }
  }
  return largest;
}
