import { LAB_EPSILON, LAB_KAPPA } from './constants';

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
