import type { PointMm } from '../units';
import { SLICE_MM } from './constants';
import type { ToeCylinder } from './toe-cylinder';
import { toToeFrame } from './toe-frame';

/** The cylinder's radius at one place along the toe; outside the outline the nearest slice. */
function radiusAt(cylinder: ToeCylinder, alongMm: number): number {
  const last = cylinder.halfWidthsMm.length - 1;
  const position = Math.min(last, Math.max(0, (alongMm - cylinder.startMm) / SLICE_MM));
  const below = Math.floor(position);
  const above = Math.min(last, below + 1);
  const share = position - below;
  return (1 - share) * cylinder.halfWidthsMm[below] + share * cylinder.halfWidthsMm[above];
}

export interface OnCylinder {
  /** Distance from the centre line in the map, either sign. */
  readonly offsetMm: number;
  readonly alongMm: number;
  readonly radiusMm: number;
}

/**
 * Where a point of the map lies on a toe.
 *
 * @param point on the card, mm
 * @param cylinder the toe
 * @returns position across and along the toe, and the cylinder's radius there
 * @example onCylinder({ acrossMm: 5, downMm: 3 }, { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10], centreMm: 4, centreSlope: 0 }).offsetMm // 1
 */
export function onCylinder(point: PointMm, cylinder: ToeCylinder): OnCylinder {
  const { acrossMm, downMm } = toToeFrame(point, cylinder.axis);
  const centreMm = cylinder.centreMm + cylinder.centreSlope * (downMm - cylinder.startMm);
  return { offsetMm: acrossMm - centreMm, alongMm: downMm, radiusMm: radiusAt(cylinder, downMm) };
}
