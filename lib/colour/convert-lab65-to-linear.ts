import { convertLab65ToXyz65 } from './convert-lab65-to-xyz65';
import { convertXyz65ToLinear } from './convert-xyz65-to-linear';
import type { Lab65, LinearRgb } from './encodings';

/**
 * L*a*b* (D65, 2°) to linear sRGB light; colours outside the gamut get negative channels, not clamped ones.
 * @param lab65 L*, a*, b*
 * @returns linear light, white = 1
 * Source: CIE 15:2004 and IEC 61966-2-1:1999.
 * @example convertLab65ToLinear({ l65: 0, a65: 0, b65: 0 }).red // 0
 */
export function convertLab65ToLinear(lab65: Lab65): LinearRgb {
  return convertXyz65ToLinear(convertLab65ToXyz65(lab65));
}
