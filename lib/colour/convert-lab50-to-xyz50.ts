import { WHITE_D50 } from './constants';
import type { Lab50, Xyz50 } from './encodings';
import { expandLab } from './expand-lab';

/**
 * L*a*b* (D50, 2°), as instruments write it, to tristimulus values under D50.
 * @param lab50 L*, a*, b* of a measured patch
 * @returns XYZ with Y of white = 1
 * Source: CIE 15:2004, annex D; white of ICC.1:2022.
 * @example convertLab50ToXyz50({ l50: 100, a50: 0, b50: 0 }).y50 // 1
 */
export function convertLab50ToXyz50(lab50: Lab50): Xyz50 {
  const fy = (lab50.l50 + 16) / 116;
  return {
    x50: WHITE_D50.x50 * expandLab(fy + lab50.a50 / 500),
    y50: WHITE_D50.y50 * expandLab(fy),
    z50: WHITE_D50.z50 * expandLab(fy - lab50.b50 / 200),
  };
}
