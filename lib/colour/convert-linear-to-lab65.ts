import { convertLinearToXyz65 } from './convert-linear-to-xyz65';
import { convertXyz65ToLab65 } from './convert-xyz65-to-lab65';
import type { Lab65, LinearRgb } from './encodings';

/**
 * Linear sRGB light to L*a*b* (D65, 2°).
 * @param linear linear light, white = 1
 * @returns L* 0…100, a*, b*
 * Source: IEC 61966-2-1:1999 and CIE 15:2004.
 * @example convertLinearToLab65({ red: 0, green: 0, blue: 0 }).l65 // 0
 */
export function convertLinearToLab65(linear: LinearRgb): Lab65 {
  return convertXyz65ToLab65(convertLinearToXyz65(linear));
}
