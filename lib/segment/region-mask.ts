import type { MapGrid } from '../rectify/millimetre-map';
import type { RingMm } from '../units';
import type { Piece } from './trace-pieces';

/**
 * Pixels of a grid whose centre lies inside some outlines: 1 inside, 0 outside; holes cut out (even–odd scan lines).
 *
 * @example regionMask(grid, pieces).reduce((n, inside) => n + inside, 0) / grid.pxPerMm ** 2 // about the area, mm²
 */
export function regionMask(grid: MapGrid, pieces: readonly Piece[]): Uint8Array {
  const mask = new Uint8Array(grid.widthPx * grid.heightPx);
  const rings = pieces.flatMap((piece) => [piece.outer, ...piece.holes]);
  const crossings: number[] = [];
  for (let row = 0; row < grid.heightPx; row++) {
    crossings.length = 0;
    const downMm = grid.originDownMm + row / grid.pxPerMm;
    for (const ring of rings) collectCrossings(ring, downMm, crossings);
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const from = Math.max(0, Math.ceil((crossings[i] - grid.originAcrossMm) * grid.pxPerMm));
      const to = Math.min(grid.widthPx - 1, Math.floor((crossings[i + 1] - grid.originAcrossMm) * grid.pxPerMm));
      if (to >= from) mask.fill(1, row * grid.widthPx + from, row * grid.widthPx + to + 1);
    }
  }
  return mask;
}

function collectCrossings(ring: RingMm, downMm: number, crossings: number[]): void {
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[j];
    const b = ring[i];
    if (a.downMm > downMm === b.downMm > downMm) continue;
    crossings.push(a.acrossMm + ((downMm - a.downMm) / (b.downMm - a.downMm)) * (b.acrossMm - a.acrossMm));
  }
}
