import { WHITE_D65 } from './constants';
import type { Lab65, Xyz65 } from './encodings';
import { compressLab } from './compress-lab';

/**
 * Tristimulus values under D65 to L*a*b* (D65, 2°).
 * @param xyz65 XYZ with Y of white = 1
 * @returns L* 0…100, a*, b*
 * Source: CIE 15:2004, 8.2.1.1.
 * @example convertXyz65ToLab65({ x65: 0, y65: 1, z65: 0 }).l65 // 100
 */
export function convertXyz65ToLab65(xyz65: Xyz65): Lab65 {
  const fx = compressLab(xyz65.x65 / WHITE_D65.x65);
  const fy = compressLab(xyz65.y65 / WHITE_D65.y65);
  const fz = compressLab(xyz65.z65 / WHITE_D65.z65);
  return { l65: 116 * fy - 16, a65: 500 * (fx - fy), b65: 200 * (fy - fz) };
}
