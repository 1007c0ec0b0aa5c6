import { randomInt } from 'node:crypto';

/** An unpredictable whole number from 0 up to, not including, `limit`. */
export const drawBelow = (limit: number): number => randomInt(limit);
