import { WHITE_D50 } from './constants';
import type { Lab50, Xyz50 } from './encodings';
import { compressLab } from './lab-transfer';

/**
 * Tristimulus values under D50 to L*a*b* (D50, 2°), for writing values beside an instrument's.
 * @param xyz50 XYZ with Y of white = 1
 * @returns L* 0…100, a*, b*
 * Source: CIE 15:2004, 8.2.1.1; white of ICC.1:2022.
 * @example convertXyz50ToLab50({ x50: 0, y50: 1, z50: 0 }).l50 // 100
 */
export function convertXyz50ToLab50(xyz50: Xyz50): Lab50 {
  const fx = compressLab(xyz50.x50 / WHITE_D50.x50);
  const fy = compressLab(xyz50.y50 / WHITE_D50.y50);
  const fz = compressLab(xyz50.z50 / WHITE_D50.z50);
  return { l50: 116 * fy - 16, a50: 500 * (fx - fy), b50: 200 * (fy - fz) };
}
