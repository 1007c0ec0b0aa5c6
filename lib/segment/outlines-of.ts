import type { RingMm } from '../units';
import type { Piece } from './trace-pieces';

/**
 * All outlines of some pieces, holes among them.
 * @example outlinesOf([]).length // 0
 */
export const outlinesOf = (pieces: readonly Piece[]): RingMm[] => pieces.flatMap((piece) => [piece.outer, ...piece.holes]);
