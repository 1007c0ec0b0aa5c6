import { quantile } from 'd3-array';
import type { UprightPhoto } from '../photo/upright-photo';
import { wholeOf } from '../photo/whole-of';

/** Lines that are read each way, and how far a step may spread. */
const LINES = 60;
const WINDOW_PX = 24;
/** A step of so many code values stands well above noise and texture. */
const LEAST_STEP_CODES = 70;
/** The sharpest steps of a picture tell its focus; most others are soft by themselves. */
const SHARPEST = 0.1;
const LEAST_STEPS = 20;

/**
 * How wide the sharpest brightness steps of a picture are, for pictures in which no card gives a scale: a blurred picture
 * has no narrow step anywhere. Camera shake blurs one way only, so rows and columns are read and the worse way counts.
 *
 * @param photo the upright photo
 * @returns 10–90 % width in camera pixels, 10th percentile over the steps of some lines; null with too few steps to tell
 * @throws NotDecoded when only a part of the photo was decoded
 * @example sharpestStepPx(photo) // 2
 */
export function sharpestStepPx(photo: UprightPhoto): number | null {
  const { widthPx, heightPx } = wholeOf(photo);
  const along = (length: number, lines: number, code: (line: number, at: number) => number) => {
    const widths = Array.from({ length: LINES }, (_, k) => stepWidths(length, (at) => code(Math.floor(((k + 0.5) * lines) / LINES), at))).flat();
    return widths.length < LEAST_STEPS ? null : (quantile(widths, SHARPEST) as number);
  };
  const green = (row: number, column: number) => photo.srgb[(row * widthPx + column) * 3 + 1];
  const ways = [along(widthPx, heightPx, green), along(heightPx, widthPx, (column, row) => green(row, column))];
  const told = ways.filter((way) => way !== null);
  return told.length === 0 ? null : Math.max(...told);
}

function stepWidths(length: number, code: (at: number) => number): number[] {
  const widths: number[] = [];
  for (let start = 0; start + WINDOW_PX < length; start += WINDOW_PX / 2) {
    const from = code(start);
    const to = code(start + WINDOW_PX);
    if (Math.abs(to - from) < LEAST_STEP_CODES) continue;
    const share = (i: number) => (code(start + i) - from) / (to - from);
    let low = 0;
    while (low < WINDOW_PX && share(low + 1) < 0.1) low++;
    let high = low + 1;
    while (high < WINDOW_PX && share(high) < 0.9) high++;
    widths.push(high - low);
  }
  return widths;
}
