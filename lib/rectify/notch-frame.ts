import type { CardGeometry } from '../card/card-geometry';
import type { PointMm } from '../units';
import { NAIL_BELOW_APEX_MM } from './constants';

/** Where the toe lies on a card: the top of its notch and the notch's middle line. */
export interface NotchFrame {
  readonly axisAcrossMm: number;
  readonly apexDownMm: number;
  readonly widthMm: number;
}

/**
 * The notch's own frame. The notch opens at the card's lower edge and the toe comes in from there.
 *
 * @example notchFrame(OWN_CARD) // { axisAcrossMm: 42.8, apexDownMm: 18, widthMm: 34 }
 */
export function notchFrame(geometry: CardGeometry): NotchFrame {
  const across = geometry.notch.map((point) => point.acrossMm);
  const left = Math.min(...across);
  const right = Math.max(...across);
  return {
    axisAcrossMm: (left + right) / 2,
    apexDownMm: Math.min(...geometry.notch.map((point) => point.downMm)),
    widthMm: right - left,
  };
}

/**
 * Where the middle of the nail is expected, the place to which distance and resolution are stated.
 * @example nailPlace(OWN_CARD) // { acrossMm: 42.8, downMm: 29 }
 */
export function nailPlace(geometry: CardGeometry): PointMm {
  const { axisAcrossMm, apexDownMm } = notchFrame(geometry);
  return { acrossMm: axisAcrossMm, downMm: apexDownMm + NAIL_BELOW_APEX_MM };
}
