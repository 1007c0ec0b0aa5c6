import type { Region, RegionRing } from './segmentation';
import type { Piece } from './trace-pieces';

/**
 * Pieces as one region with a confidence: the mean of the field inside, rescaled from 0.5…1 to 0…1.
 *
 * @param meanInside mean of the field over the pieces
 * @param boundaryUMm standard uncertainty of the outline
 * @example toRegion(pieces, 0.95, 0.2).confidence // 0.9
 */
export function toRegion(pieces: readonly Piece[], meanInside: number, boundaryUMm: number): Region {
  const rings: RegionRing[] = pieces.flatMap((piece) => [
    { ring: piece.outer, hole: false },
    ...piece.holes.map((ring) => ({ ring, hole: true })),
  ]);
  return { rings, confidence: Math.min(1, Math.max(0, 2 * meanInside - 1)), boundaryUMm };
}
