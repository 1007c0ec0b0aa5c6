import type { LineMm } from '../units';

/** `[acrossMm, downMm]`, as in a GeoJSON position. */
export type PositionMm = readonly [number, number];

const PER_MM = 1000;

/**
 * A ring or line as plain pairs with three decimals, for a file that a person may read.
 *
 * @param line points in mm
 * @returns pairs [across, down] in mm, rounded to 0.001 mm; neighbours that round to the same pair are written once
 * @example lineToJson([{ acrossMm: 1.23456, downMm: -0.00001 }]) // [[1.235, 0]]
 */
export function lineToJson(line: LineMm): PositionMm[] {
  // Adding 0 turns −0 into 0, which would otherwise be written differently by different writers.
  const rounded = line.map(
    ({ acrossMm, downMm }): PositionMm => [
      Math.round(acrossMm * PER_MM) / PER_MM + 0,
      Math.round(downMm * PER_MM) / PER_MM + 0,
    ],
  );
  return rounded.filter(
    ([across, down], index) => index === 0 || across !== rounded[index - 1][0] || down !== rounded[index - 1][1],
  );
}
