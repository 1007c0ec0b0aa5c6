import { NORMAL_975 } from './constants';

/**
 * The smallest difference between two measurements that their uncertainty does not explain (95 %).
 *
 * @param u1 standard uncertainty of the first, ≥ 0
 * @param u2 standard uncertainty of the second, ≥ 0, same unit
 * @returns in the unit of u1 and u2; for u1 = u2 = u it is 1.96 · √2 · u
 * @throws RangeError where one is negative or not finite
 * Errors that both photos share (the same printed card, the same habit of a method) cancel in a difference;
 * both are counted here, so the change that is asked for is never too small. Source: de Vet et al. 2006,
 * SDC = 1.96 · √2 · SEM.
 * @example smallestDetectableChange(3, 4) // 9.8
 */
export function smallestDetectableChange(u1: number, u2: number): number {
  for (const u of [u1, u2]) {
    if (!(u >= 0) || !Number.isFinite(u)) {
      throw new RangeError(`smallestDetectableChange: u must be ≥ 0, received ${u}`);
    }
  }
  return NORMAL_975 * Math.hypot(u1, u2);
}
