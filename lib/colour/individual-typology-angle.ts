import { ITA_CLASS_LOWER_BOUNDS } from './constants';
import type { ItaClass } from './constants';
import type { Lab65 } from './encodings';

export interface IndividualTypologyAngle {
  /** −180…180 degrees; larger is lighter. */
  readonly angleDeg: number;
  readonly itaClass: ItaClass;
}

/**
 * Individual typology angle (ITA): how light skin is, and the class of that angle.
 * @param lab65 L*a*b* of skin, D65
 * @returns angle in degrees and one of six classes; null where neither lightness nor yellowness points anywhere
 * (L* = 50 and b* = 0), and where b* ≤ 0: the angle is defined for yellowish skin, and a bluish reading is a failed
 * white balance or no skin. The plain arctangent would turn such a reading over and call light skin dark.
 * Source: Chardon, Cretois and Hourseau, Int J Cosmet Sci 1991;13:191-208; classes of Del Bino and Bernerd,
 * Br J Dermatol 2013;169 Suppl 3:33-40.
 * @example individualTypologyAngle({ l65: 65, a65: 10, b65: 15 })?.angleDeg // 45
 */
export function individualTypologyAngle(lab65: Lab65): IndividualTypologyAngle | null {
  if (!(lab65.b65 > 0)) return null;
  const angleDeg = (Math.atan2(lab65.l65 - 50, lab65.b65) * 180) / Math.PI;
  const found = ITA_CLASS_LOWER_BOUNDS.find(({ aboveDeg }) => angleDeg > aboveDeg);
  return { angleDeg, itaClass: found?.itaClass ?? 'dark' };
}
