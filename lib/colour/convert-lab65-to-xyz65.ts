import { WHITE_D65 } from './constants';
import type { Lab65, Xyz65 } from './encodings';
import { expandLab } from './expand-lab';

/**
 * L*a*b* (D65, 2°) to tristimulus values under D65.
 * @param lab65 L*, a*, b*
 * @returns XYZ with Y of white = 1
 * Source: CIE 15:2004, annex D.
 * @example convertLab65ToXyz65({ l65: 100, a65: 0, b65: 0 }).y65 // 1
 */
export function convertLab65ToXyz65(lab65: Lab65): Xyz65 {
  const fy = (lab65.l65 + 16) / 116;
  return {
    x65: WHITE_D65.x65 * expandLab(fy + lab65.a65 / 500),
    y65: WHITE_D65.y65 * expandLab(fy),
    z65: WHITE_D65.z65 * expandLab(fy - lab65.b65 / 200),
  };
}
