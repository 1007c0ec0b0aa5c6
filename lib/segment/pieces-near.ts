import { comesWithin } from './comes-within';
import type { Piece } from './trace-pieces';
import type { LineMm } from '../units';

/**
 * Pieces that come within a distance of some lines.
 *
 * @param pieces of a tissue
 * @param lines in mm
 * @param withinMm distance, ≥ 0
 * @example piecesNear(pieces, [margin.line], 1)
 */
export function piecesNear(pieces: readonly Piece[], lines: readonly LineMm[], withinMm: number): Piece[] {
  return pieces.filter((piece) => lines.some((line) => comesWithin(piece.outer, line, withinMm)));
}
