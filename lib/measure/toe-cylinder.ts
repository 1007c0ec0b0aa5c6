import { median } from 'd3-array';
import { CENTRE_LINE_SHARE, HALF_WIDTH_RANGE_MM, HALF_WIDTH_SMOOTHING_MM, SHORTEST_TOE_MM, SLICE_MM } from './constants';
import { largestRing } from './largest-ring';
import { lineThrough } from './line-through';
import type { ToeAxis } from './measure-input';
import type { Rings } from './region-area';
import { toToeFrame } from './toe-frame';
import { type ToeSlice, toeSlices } from './toe-slices';

/** A toe as a cylinder that may grow thicker along its axis: what its outline in the map allows to know. */
export interface ToeCylinder {
  readonly axis: ToeAxis;
  /** Position along the axis of the first half width; the others follow at SLICE_MM. */
  readonly startMm: number;
  readonly halfWidthsMm: readonly number[];
  /** The centre line across = centreMm + centreSlope · (along − startMm), in the toe's frame. */
  readonly centreMm: number;
  readonly centreSlope: number;
}

/** Least-squares line through the middles of the slices that are wide enough to be past the rounded tip. */
function centreLine(slices: readonly ToeSlice[], widestMm: number): { centreMm: number; centreSlope: number } {
  const wide = slices.flatMap(({ left, right }, index) =>
    (right - left) / 2 >= CENTRE_LINE_SHARE * widestMm ? [{ x: index * SLICE_MM, y: (left + right) / 2 }] : [],
  );
  const line = lineThrough(wide);
  return { centreMm: line(0), centreSlope: line(1) - line(0) };
}

/**
 * Fits the cylinder: half width slice by slice, smoothed by a running median, and a straight centre line.
 *
 * @param toe outline of the toe in the map, mm; its largest outer ring is used
 * @param axis direction of the toe in the card's plane
 * @returns the cylinder, or null where the outline is too short or no big toe's width
 * Assumes that the outline lies where each cross section is widest as the lens sees it; what the section is between the two sides
 * is told by `toe-section.ts`, and doubted by `body-variants.ts`.
 * @example fitToeCylinder([], { across: 0, down: 1 }) // null
 */
export function fitToeCylinder(toe: Rings, axis: ToeAxis): ToeCylinder | null {
  const largest = largestRing(toe);
  if (largest === null || largest.length < 3) return null;
  const outline = largest.map((point) => toToeFrame(point, axis));
  const alongs = outline.map(({ downMm }) => downMm);
  // Half a slice in from both ends, where the outline has no width.
  const startMm = Math.min(...alongs) + SLICE_MM / 2;
  const lengthMm = Math.max(...alongs) - startMm;
  if (lengthMm < SHORTEST_TOE_MM) return null;
  const slices = toeSlices(outline, startMm, Math.floor(lengthMm / SLICE_MM));
  const raw = slices.map(({ left, right }) => (right - left) / 2);
  const window = Math.round(HALF_WIDTH_SMOOTHING_MM / SLICE_MM / 2);
  const halfWidthsMm = raw.map((_, index) => median(raw.slice(Math.max(0, index - window), index + window + 1)) as number);
  const widestMm = Math.max(...halfWidthsMm);
  if (!(widestMm >= HALF_WIDTH_RANGE_MM.least && widestMm <= HALF_WIDTH_RANGE_MM.most)) return null;
  return { axis, startMm, halfWidthsMm, ...centreLine(slices, widestMm) };
}
