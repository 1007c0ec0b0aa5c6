/** Tissue fields drawn from known outlines: what a perfect model would answer, for testing what comes after it. */
import { ringMask } from '../../../lib/rectify/ring-mask';
import { distanceField } from '../../../lib/segment/distance-field';
import type { TissueFields } from '../../../lib/segment/segmentation';
import type { MapGrid } from '../../../lib/rectify/millimetre-map';
import type { LineMm, PointMm, RingMm } from '../../../lib/units';

export interface KnownOutlines {
  readonly toe: readonly RingMm[];
  readonly nailPlate: readonly RingMm[];
  readonly groove: readonly RingMm[];
  readonly raw: readonly RingMm[];
  readonly macerated: readonly RingMm[];
  readonly erythema: readonly RingMm[];
  readonly margin: LineMm;
}

/** How quickly a drawn field goes from 0 to 1 across an outline, mm (logistic). */
const SOFTNESS_MM = 0.08;
const MARGIN_WIDTH_MM = 0.25;

export function drawFields(grid: MapGrid, known: KnownOutlines): TissueFields {
  const plane = (rings: readonly RingMm[]) => softPlane(grid, rings);
  const nailPlate = plane(known.nailPlate);
  const groove = plane(known.groove);
  return {
    grid,
    toe: plane(known.toe),
    nailPlate,
    groove,
    nailUnit: plane([...known.nailPlate, ...known.groove]),
    foldMargin: linePlane(grid, known.margin),
    raw: plane(known.raw),
    macerated: plane(known.macerated),
    erythema: plane(known.erythema),
  };
}

function softPlane(grid: MapGrid, rings: readonly RingMm[]): Float32Array {
  const union = new Uint8Array(grid.widthPx * grid.heightPx);
  for (const outer of rings) ringMask([outer], grid).forEach((one, i) => (union[i] |= one));
  const toInside = distanceField(grid, union);
  const toOutside = distanceField(grid, union.map((one) => 1 - one));
  const half = 0.5 / grid.pxPerMm;
  return toInside.map((outsideMm, i) => 1 / (1 + Math.exp((outsideMm > 0 ? outsideMm - half : half - toOutside[i]) / SOFTNESS_MM)));
}

function linePlane(grid: MapGrid, line: LineMm): Float32Array {
  const marked = new Uint8Array(grid.widthPx * grid.heightPx);
  line.slice(1).forEach((to, i) => markPiece(grid, marked, line[i], to));
  return distanceField(grid, marked).map((mm) => Math.exp(-((mm / MARGIN_WIDTH_MM) ** 2)));
}

function markPiece(grid: MapGrid, marked: Uint8Array, from: PointMm, to: PointMm): void {
  const steps = Math.max(1, Math.ceil(Math.hypot(to.acrossMm - from.acrossMm, to.downMm - from.downMm) * grid.pxPerMm * 2));
  for (let step = 0; step <= steps; step++) {
    const acrossMm = from.acrossMm + (step / steps) * (to.acrossMm - from.acrossMm);
    const downMm = from.downMm + (step / steps) * (to.downMm - from.downMm);
    const row = Math.round((downMm - grid.originDownMm) * grid.pxPerMm);
    const column = Math.round((acrossMm - grid.originAcrossMm) * grid.pxPerMm);
    if (row >= 0 && column >= 0 && row < grid.heightPx && column < grid.widthPx) marked[row * grid.widthPx + column] = 1;
  }
}
