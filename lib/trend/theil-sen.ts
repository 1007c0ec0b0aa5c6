import { probit } from 'simple-statistics';
import { mannKendallVariance } from './mann-kendall';
import { medianOfSorted } from './median-of-sorted';
import { tieSizes } from './tie-sizes';

export interface TheilSen {
  /** Median of the slopes of all pairs, unit of the values per unit of time. */
  readonly slope: number;
  readonly slopeFrom: number;
  readonly slopeTo: number;
  /** Median of the values less slope times median of the times. */
  readonly intercept: number;
}

/**
 * Slope of a course that a few wild values do not bend, with its confidence interval.
 *
 * @param times at least two different ones, e.g. days since the procedure
 * @param values same length, same order
 * @param confidence of the interval, 0 < confidence < 1
 * @returns the slope, its interval and the intercept by medians; pairs at the same time are left out
 * @throws RangeError for unequal lengths, or fewer than two different times
 * Times are only ever subtracted from each other, so any origin does. Source: Sen 1968, J Am Stat Assoc 63:1379–89.
 * @example theilSen([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], 0.93).slope // 4
 */
export function theilSen(times: readonly number[], values: readonly number[], confidence: number): TheilSen {
  if (times.length !== values.length) throw new RangeError(`theilSen: as many values as times are needed, received ${times.length} and ${values.length}`);
  const slopes = sortedSlopes(times, values);
  if (slopes.length === 0) throw new RangeError('theilSen: two different times are needed, received none');
  const slope = medianOfSorted(slopes);
  const { low, high } = intervalRanks(times, values, slopes.length, confidence);
  const origin = times[0];
  const middleTime = origin + medianOfSorted(Float64Array.from(times, (time) => time - origin).sort());
  const middleValue = medianOfSorted(Float64Array.from(values).sort());
  return { slope, slopeFrom: slopes[low], slopeTo: slopes[high], intercept: middleValue - slope * middleTime };
}

function sortedSlopes(times: readonly number[], values: readonly number[]): Float64Array {
  const slopes: number[] = [];
  for (let j = 1; j < times.length; j++) {
    for (let i = 0; i < j; i++) if (times[j] !== times[i]) slopes.push((values[j] - values[i]) / (times[j] - times[i]));
  }
  return Float64Array.from(slopes).sort();
}

/** Ranks of the slopes that bound the interval (Sen 1968, eq. 2.6); ties among times and values narrow the spread of S. */
function intervalRanks(times: readonly number[], values: readonly number[], slopes: number, confidence: number) {
  const variance = mannKendallVariance(times.length, [...tieSizes(times), ...tieSizes(values)]);
  const z = probit(0.5 + confidence / 2);
  const spread = z * Math.sqrt(Math.max(0, variance));
  return {
    low: Math.max(0, Math.round((slopes - spread) / 2) - 1),
    high: Math.min(slopes - 1, Math.round((slopes + spread) / 2)),
  };
}
