/** Outlines of where a field on the plane is positive, as rings in millimetres grouped by connected piece. */
import { contours } from 'd3-contour';
import type { LineOfPairs, TruthRing } from '../phantom-truth';
import type { PlaneMap } from './plane-map';

/** One connected piece: its outer ring first, then its holes. */
export type Piece = readonly TruthRing[];

/** Signed area of a ring, mm². */
export function ringAreaMm2(ring: LineOfPairs): number {
  let sum = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) sum += ring[j][0] * ring[i][1] - ring[i][0] * ring[j][1];
  return Math.abs(sum / 2);
}

/** Area of pieces, holes taken off. */
export const areaOf = (rings: readonly TruthRing[]): number =>
  rings.reduce((sum, { ring, hole }) => sum + (hole ? -1 : 1) * ringAreaMm2(ring), 0);

/** The pieces where `field` > 0; crumbs under 0.05 mm² are left out. */
export function zeroOutline(map: PlaneMap, field: Float32Array): Piece[] {
  const { widthPx, heightPx, pxPerMm, originAcrossMm, originDownMm } = map;
  const shape = contours().size([widthPx, heightPx]).contour(field as unknown as number[], 0);
  const toMm = (ring: readonly number[][]): LineOfPairs =>
    ring.slice(0, -1).map(([x, y]) => [originAcrossMm + (x - 0.5) / pxPerMm, originDownMm + (y - 0.5) / pxPerMm] as const);
  return shape.coordinates
    .map((polygon) => polygon.map((ring, i) => ({ ring: toMm(ring), hole: i > 0 })))
    .filter((piece) => ringAreaMm2(piece[0].ring) > 0.05);
}
