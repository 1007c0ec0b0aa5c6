import { mapRings } from './map-rings';
import { regionAreaMm2 } from './region-area';
import type { Rings } from './region-area';
import type { ToeCylinder } from './toe-cylinder';
import { unrollLine } from './unroll-line';

/**
 * Area of a region on the skin of the cylinder.
 *
 * @param rings rings on the card, mm
 * @param cylinder the toe
 * @returns mm²: each element of the map counts 1 / √(1 − (d / R)²), held at the cap
 * @example unrolledAreaMm2([], { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10], centreMm: 4, centreSlope: 0 }) // 0
 */
export function unrolledAreaMm2(rings: Rings, cylinder: ToeCylinder): number {
  return regionAreaMm2(mapRings(rings, (line) => unrollLine(line, cylinder)));
}
