import type { PointMm } from '../units';
import type { InkedShape } from './inked-shape';

/** Part of a picture: which pixels, and how much of each is covered by ink, 0…1. */
export interface Coverage {
  readonly left: number;
  readonly top: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly share: Float64Array;
}

/**
 * One edge within one row of pixels, from x0 to x1, `dy` high (signed). Each piece between two pixel borders covers
 * part of its own pixel and all pixels to its right; `sums` holds the differences along the row.
 */
function addEdgeInRow(sums: Float64Array, rowStart: number, widthPx: number, x0: number, x1: number, dy: number): void {
  const leftmost = Math.min(x0, x1);
  const rightmost = Math.max(x0, x1);
  const run = rightmost - leftmost;
  for (let column = Math.floor(leftmost); column <= Math.floor(rightmost); column++) {
    const from = Math.max(leftmost, column);
    const to = Math.min(rightmost, column + 1);
    const height = run > 0 ? (dy * (to - from)) / run : dy;
    if (height === 0 || column >= widthPx) continue;
    if (column < 0) {
      sums[rowStart] += height;
      continue;
    }
    const rightPart = column + 1 - (from + to) / 2;
    sums[rowStart + column] += height * rightPart;
    sums[rowStart + column + 1] += height * (1 - rightPart);
  }
}

function addEdge(sums: Float64Array, widthPx: number, heightPx: number, a: readonly [number, number], b: readonly [number, number]): void {
  const [[xTop, yTop], [xBottom, yBottom], sign] = a[1] <= b[1] ? [a, b, -1] : [b, a, 1];
  if (yTop === yBottom) return;
  const slope = (xBottom - xTop) / (yBottom - yTop);
  const firstRow = Math.max(0, Math.floor(yTop));
  for (let row = firstRow; row < Math.min(heightPx, Math.ceil(yBottom)); row++) {
    const y0 = Math.max(yTop, row);
    const y1 = Math.min(yBottom, row + 1);
    const x0 = xTop + (y0 - yTop) * slope;
    addEdgeInRow(sums, row * (widthPx + 1), widthPx, x0, x0 + (y1 - y0) * slope, sign * (y1 - y0));
  }
}

/** The pixels a shape can touch, cut off at the picture. */
function frameOf(shape: InkedShape, pxPerMm: number, widthPx: number, heightPx: number): Omit<Coverage, 'share'> {
  let [left, top, right, bottom] = [widthPx, heightPx, 0, 0];
  for (const { acrossMm, downMm } of shape.rings.flat()) {
    left = Math.min(left, Math.floor(acrossMm * pxPerMm));
    top = Math.min(top, Math.floor(downMm * pxPerMm));
    right = Math.max(right, Math.ceil(acrossMm * pxPerMm));
    bottom = Math.max(bottom, Math.ceil(downMm * pxPerMm));
  }
  left = Math.max(0, left);
  top = Math.max(0, top);
  return { left, top, widthPx: Math.max(0, Math.min(widthPx, right) - left), heightPx: Math.max(0, Math.min(heightPx, bottom) - top) };
}

/**
 * How much of each pixel a shape covers: exact area, not samples (signed areas of trapezoids below each edge).
 *
 * @param shape in mm
 * @param pxPerMm > 0
 * @param widthPx of the whole picture
 * @param heightPx of the whole picture; its pixel in
 *   row r, column c is the square from c to c + 1 and r to r + 1, in pixels from the top left corner
 * @returns the touched part of the picture. Where rings overlap the sum is cut off at 1.
 * @example shapeCoverage({ name: 'square', ink: [0, 0, 0], rings: [rectRing(0, 0, 1.5, 1.5)] }, 1, 3, 3).share[3] // 0.25
 */
export function shapeCoverage(shape: InkedShape, pxPerMm: number, widthPx: number, heightPx: number): Coverage {
  const frame = frameOf(shape, pxPerMm, widthPx, heightPx);
  const sums = new Float64Array((frame.widthPx + 1) * frame.heightPx);
  const inFrame = (point: PointMm): [number, number] => [
    point.acrossMm * pxPerMm - frame.left,
    point.downMm * pxPerMm - frame.top,
  ];
  for (const ring of shape.rings) {
    ring.forEach((point, place) => {
      addEdge(sums, frame.widthPx, frame.heightPx, inFrame(point), inFrame(ring[(place + 1) % ring.length]));
    });
  }
  const share = new Float64Array(frame.widthPx * frame.heightPx);
  for (let row = 0; row < frame.heightPx; row++) {
    let covered = 0;
    for (let column = 0; column < frame.widthPx; column++) {
      covered += sums[row * (frame.widthPx + 1) + column];
      share[row * frame.widthPx + column] = Math.min(1, Math.max(0, covered));
    }
  }
  return { ...frame, share };
}
