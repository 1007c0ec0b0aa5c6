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

/**
 * The inverse of `compressLab`.
 * @param compressed f(ratio)
 * @returns tristimulus value over that of white
 * Source: CIE 15:2004, annex D, exact constants.
 * @example expandLab(1) // 1
 */
export function expandLab(compressed: number): number {
  const cube = compressed ** 3;
  return cube > LAB_EPSILON ? cube : (116 * compressed - 16) / LAB_KAPPA;
}
