import { gridPoint } from '../rectify/grid-point';
import { isInsideOutline } from '../rectify/inside-outline';
import type { MapGrid } from '../rectify/millimetre-map';
import type { RingMm } from '../units';
import { isolines, type Isoline } from './isolines';

/** One connected piece of a field above a level: its outer outline and its holes, mm. */
export interface Piece {
  readonly outer: RingMm;
  readonly holes: readonly RingMm[];
  readonly areaMm2: number;
}

/**
 * Outlines of a field at a level, found between pixels, largest piece first.
 *
 * @param field one value per pixel of `grid`
 * @param level the field's value on the outline
 * @param leastAreaMm2 smaller pieces are left out
 * @example tracePieces(grid, fields.toe, 0.5, 1)[0].areaMm2
 */
export function tracePieces(grid: MapGrid, field: Float32Array | Uint8Array, level: number, leastAreaMm2: number): Piece[] {
  const leastPx = leastAreaMm2 * grid.pxPerMm ** 2;
  const lines = isolines(grid, field, level);
  // Holes only take area away: an outer line that is too small alone never makes a piece.
  const outers = lines.filter((line) => !line.hole && line.areaPx >= leastPx).sort((a, b) => a.areaPx - b.areaPx);
  const pieces = outers.map((line) => ({ outer: toMm(grid, line), holes: [] as RingMm[], areaPx: line.areaPx }));
  for (const hole of outers.length > 0 ? lines.filter((line) => line.hole) : []) {
    const ring = toMm(grid, hole);
    // Smallest outer line first: an island in a hole keeps its own holes.
    const piece = pieces.find(({ outer }) => isInsideOutline(ring[0], outer));
    if (!piece) continue;
    piece.holes.push(ring);
    piece.areaPx -= hole.areaPx;
  }
  return pieces
    .filter(({ areaPx }) => areaPx >= leastPx)
    .map(({ outer, holes, areaPx }) => ({ outer, holes, areaMm2: areaPx / grid.pxPerMm ** 2 }))
    .sort((a, b) => b.areaMm2 - a.areaMm2);
}

function toMm(grid: MapGrid, line: Isoline): RingMm {
  return line.points.map(({ row, column }) => gridPoint(grid, row, column));
}
