import { mapRings } from './map-rings';
import { regionAreaMm2 } from './region-area';
import type { Rings } from './region-area';
import type { ToeRelief } from './toe-relief';
import { unrollLine } from './unroll-line';

/**
 * Area of a region on the skin of the toe.
 *
 * @param rings rings straight from above, mm
 * @param relief the toe's body and the lens
 * @returns mm²: each element of the projection counts as much more as the skin is steep, held at the cap
 * @example unrolledAreaMm2([], relief) // 0
 */
export function unrolledAreaMm2(rings: Rings, relief: ToeRelief): number {
  return regionAreaMm2(mapRings(rings, (line) => unrollLine(line, relief)));
}
