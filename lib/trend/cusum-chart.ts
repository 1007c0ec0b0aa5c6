export interface CusumChart {
  /** Sums of what lies above target + slack, and below target − slack; never negative. */
  readonly up: readonly number[];
  readonly down: readonly number[];
  /** Place of the first value whose upward sum exceeds the decision limit; null where there is none. */
  readonly firstUp: number | null;
  readonly firstDown: number | null;
}

/**
 * Tabular cumulative sums: a quick eye for small lasting shifts.
 *
 * @param values in order of time
 * @param target level that is watched
 * @param slack k, in the unit of the values: half of the shift that matters
 * @param decision h, in the unit of the values
 * Source: NIST/SEMATECH e-Handbook 6.3.2.3.
 * @example cusumChart([325.35], 325, 0.3175, 4.1959).up // [0.0325]
 */
export function cusumChart(values: readonly number[], target: number, slack: number, decision: number): CusumChart {
  let [above, below] = [0, 0];
  const up = values.map((value) => (above = Math.max(0, above + value - target - slack)));
  const down = values.map((value) => (below = Math.max(0, below + target - slack - value)));
  const first = (sums: readonly number[]) => {
    const at = sums.findIndex((sum) => sum > decision);
    return at < 0 ? null : at;
  };
  return { up, down, firstUp: first(up), firstDown: first(down) };
}
