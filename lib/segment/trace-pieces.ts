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
  const [shape] = contours().size([grid.widthPx, grid.heightPx]).thresholds([level])(field as unknown as number[]);
  const pieces = shape.coordinates.map(([outer, ...holes]) => {
    const rings = [outer, ...holes].map((ring) => toMm(grid, ring));
    const [outerArea, ...holeAreas] = rings.map(ringAreaMm2);
    return { outer: rings[0], holes: rings.slice(1), areaMm2: outerArea - holeAreas.reduce((sum, one) => sum + one, 0) };
  });
  return pieces.filter((piece) => piece.areaMm2 >= leastAreaMm2).sort((a, b) => b.areaMm2 - a.areaMm2);
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
