import { LAB_EPSILON, LAB_KAPPA } from './constants';

/**
 * The compressive function of L*a*b*: cube root, with a straight line near black.
 * @param ratio tristimulus value over that of white; 0…1 for surfaces, any finite number allowed
 * @returns f(ratio), 1 at white
 * Source: CIE 15:2004, 8.2.1.1, with exact ε = 216/24389 and κ = 24389/27.
 * @example compressLab(1) // 1
 */
export function compressLab(ratio: number): number {
  return ratio > LAB_EPSILON ? Math.cbrt(ratio) : (LAB_KAPPA * ratio + 16) / 116;
}
