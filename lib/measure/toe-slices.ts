import type { LineMm } from '../units';
import { SLICE_MM } from './constants';

/** Leftmost and rightmost place of an outline at one place along the toe, mm; Infinity and −Infinity where it has none. */
export interface ToeSlice {
  left: number;
  right: number;
}

/**
 * Leftmost and rightmost place of an outline at equal steps along the toe.
 *
 * @param outline closed, in the toe's frame, mm
 * @param startMm place along the toe of the first slice
 * @param count how many, SLICE_MM apart
 * @example toeSlices(rectangle, 0.25, 4)[0].right
 */
export function toeSlices(outline: LineMm, startMm: number, count: number): ToeSlice[] {
  const slices = Array.from({ length: count }, (): ToeSlice => ({ left: Infinity, right: -Infinity }));
  outline.forEach((from, index) => {
    const to = outline[(index + 1) % outline.length];
    const [high, low] = from.downMm <= to.downMm ? [from, to] : [to, from];
    const first = Math.max(0, Math.ceil((high.downMm - startMm) / SLICE_MM));
    const last = Math.min(count - 1, Math.floor((low.downMm - startMm) / SLICE_MM));
    for (let at = first; at <= last; at += 1) {
      const span = low.downMm - high.downMm;
      const share = span === 0 ? 0 : (startMm + at * SLICE_MM - high.downMm) / span;
      const across = high.acrossMm + share * (low.acrossMm - high.acrossMm);
      slices[at].left = Math.min(slices[at].left, across);
      slices[at].right = Math.max(slices[at].right, across);
    }
  });
  return slices;
}
