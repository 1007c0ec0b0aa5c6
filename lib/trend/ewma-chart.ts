export interface EwmaChart {
  /** One smoothed value for each value. */
  readonly smoothed: readonly number[];
  /** Limits that hold after many values. */
  readonly lower: number;
  readonly upper: number;
  /** Place of the first smoothed value above the upper limit; null where there is none. */
  readonly firstAbove: number | null;
}

/**
 * Exponentially weighted moving average with its limits: an eye for slow drifts.
 *
 * @param values in order of time
 * @param target level that is watched
 * @param s standard deviation of one value, ≥ 0
 * @param weight of the newest value, 0 < weight ≤ 1
 * @param limit half width of the limits in standard deviations of the average
 * Source: NIST/SEMATECH e-Handbook 6.3.2.4, with the limits that hold after many values.
 * @example ewmaChart([52, 47], 50, 2.0539, 0.3, 3).smoothed // [50.60, 49.52]
 */
export function ewmaChart(values: readonly number[], target: number, s: number, weight: number, limit: number): EwmaChart {
  if (!(weight > 0 && weight <= 1)) throw new RangeError(`ewmaChart: a weight above 0 and up to 1 is needed, received ${weight}`);
  let average = target;
  const smoothed = values.map((value) => (average = weight * value + (1 - weight) * average));
  const half = limit * s * Math.sqrt(weight / (2 - weight));
  const above = smoothed.findIndex((one) => one > target + half);
  return { smoothed, lower: target - half, upper: target + half, firstAbove: above < 0 ? null : above };
}
