/** 0 below `low`, 1 above `high`, smooth between. `smoothStep(0, 2, 1)` is 0.5. */
export function smoothStep(low: number, high: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - low) / (high - low)));
  return t * t * (3 - 2 * t);
}

/** `mix(2, 4, 0.5)` is 3. */
export const mix = (from: number, to: number, share: number): number => from + (to - from) * share;

/** `limit(7, 0, 5)` is 5. */
export const limit = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** The normal distribution's upper share, 1 − Φ(z); Abramowitz and Stegun 1964, 26.2.17 (error below 1e-7). */
export function upperTail(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = 0.3989422804014327 * Math.exp((-z * z) / 2) * series;
  return z >= 0 ? tail : 1 - tail;
}
