import { LEAST_BOUNDARY_U_MM, OUTLINE_HIGH, OUTLINE_LOW } from './constants';
import { outlinesOf } from './outlines-of';
import type { Region } from './segmentation';
import { toRegion } from './to-region';
import type { Piece } from './trace-pieces';
import type { MapGrid } from '../rectify/millimetre-map';
import { ringMask } from '../rectify/ring-mask';
import type { LineMm } from '../units';

/**
 * Pieces of a field as one region: how sure the field is inside, and how uncertain their outline.
 *
 * @param grid the map
 * @param field values 0…1 in which the pieces were traced
 * @param pieces at least one
 * @example asRegion(grid, fields.raw, pieces).confidence // 0.8
 */
export function asRegion(grid: MapGrid, field: Float32Array, pieces: readonly Piece[]): Region {
  const inside = ringMask(outlinesOf(pieces), grid);
  let sum = 0;
  let n = 0;
  for (let i = 0; i < inside.length; i++) {
    if (inside[i] === 0) continue;
    sum += field[i];
    n++;
  }
  return toRegion(pieces, n > 0 ? sum / n : 0, outlineUMm(grid, field, pieces[0]));
}

/**
 * The band between the outlines at 69 % and at 31 %, over its length, halved: one standard deviation of where the edge may be, mm.
 *
 * @param grid the map
 * @param field values 0…1
 * @param piece the one whose outline it is
 * @example outlineUMm(grid, fields.nailUnit, piece) // 0.1
 */
export function outlineUMm(grid: MapGrid, field: Float32Array, piece: Piece): number {
  let between = 0;
  for (let i = 0; i < field.length; i++) if (field[i] > OUTLINE_LOW && field[i] < OUTLINE_HIGH) between++;
  return Math.max(LEAST_BOUNDARY_U_MM, between / grid.pxPerMm ** 2 / 2 / perimeterMm(piece.outer));
}

function perimeterMm(ring: LineMm): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length];
    return sum + Math.hypot(q.acrossMm - p.acrossMm, q.downMm - p.downMm);
  }, 0);
}
