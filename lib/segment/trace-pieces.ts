import { contours } from 'd3-contour';
import { gridPoint } from '../rectify/grid-point';
import type { MapGrid } from '../rectify/millimetre-map';
import type { RingMm } from '../units';

/** One connected piece of a field above a level: its outer outline and its holes, mm. */
export interface Piece {
  readonly outer: RingMm;
  readonly holes: readonly RingMm[];
  readonly areaMm2: number;
}

/**
 * Outlines of a field at a level, found between pixels by marching squares with linear interpolation (Lorensen and
 * Cline 1987 in two dimensions; library d3-contour), largest piece first.
 *
 * @param field one value per pixel of `grid`
 * @param level the field's value on the outline
 * @param leastAreaMm2 smaller pieces are left out
 * @example tracePieces(grid, fields.toe, 0.5, 1)[0].areaMm2
 */
export function tracePieces(grid: MapGrid, field: Float32Array, level: number, leastAreaMm2: number): Piece[] {
  const part = partAbove(grid, field, level);
  if (!part) return [];
  const { window } = part;
  const [shape] = contours().size([window.widthPx, window.heightPx]).thresholds([level])(part.field as unknown as number[]);
  const pieces = shape.coordinates.map(([outer, ...holes]) => {
    const rings = [outer, ...holes].map((ring) => toMm(window, ring));
    const [outerArea, ...holeAreas] = rings.map(ringAreaMm2);
    return { outer: rings[0], holes: rings.slice(1), areaMm2: outerArea - holeAreas.reduce((sum, one) => sum + one, 0) };
  });
  return pieces.filter((piece) => piece.areaMm2 >= leastAreaMm2).sort((a, b) => b.areaMm2 - a.areaMm2);
}

/** The smallest window of the map that holds everything from the level up, with a pixel to spare: most fields are empty. */
function partAbove(grid: MapGrid, field: Float32Array, level: number): { window: MapGrid; field: Float32Array } | null {
  const { widthPx, heightPx, pxPerMm } = grid;
  let [top, bottom, left, right] = [heightPx, -1, widthPx, -1];
  for (let row = 0, i = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++, i++) {
      if (!(field[i] >= level)) continue;
      if (row < top) top = row;
      bottom = row;
      if (column < left) left = column;
      if (column > right) right = column;
    }
  }
  if (bottom < 0) return null;
  [top, left, bottom, right] = [Math.max(0, top - 1), Math.max(0, left - 1), Math.min(heightPx - 1, bottom + 1), Math.min(widthPx - 1, right + 1)];
  const size = { widthPx: right - left + 1, heightPx: bottom - top + 1 };
  const part = new Float32Array(size.widthPx * size.heightPx);
  for (let row = 0; row < size.heightPx; row++) {
    const from = (top + row) * widthPx + left;
    part.set(field.subarray(from, from + size.widthPx), row * size.widthPx);
  }
  const origin = { originAcrossMm: grid.originAcrossMm + left / pxPerMm, originDownMm: grid.originDownMm + top / pxPerMm };
  return { window: { ...origin, pxPerMm, ...size }, field: part };
}

/** d3-contour puts a pixel's centre at half numbers and repeats the first point at the end. */
function toMm(grid: MapGrid, ring: readonly (readonly number[])[]): RingMm {
  return ring.slice(0, -1).map(([x, y]) => gridPoint(grid, y - 0.5, x - 0.5));
}

function ringAreaMm2(ring: RingMm): number {
  let twice = 0;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length];
    twice += p.acrossMm * q.downMm - q.acrossMm * p.downMm;
  });
  return Math.abs(twice) / 2;
}
