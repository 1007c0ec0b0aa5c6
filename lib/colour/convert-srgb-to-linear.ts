import type { LinearRgb, SrgbU8 } from './encodings';
import { decodeSrgb } from './decode-srgb';

/**
 * sRGB code values to linear light.
 * @param srgb code values 0…255
 * @returns linear light, display white = 1
 * Source: IEC 61966-2-1:1999, 5.2.
 * @example convertSrgbToLinear({ redCode: 255, greenCode: 0, blueCode: 0 }).red // 1
 */
export function convertSrgbToLinear(srgb: SrgbU8): LinearRgb {
  return { red: decodeSrgb(srgb.redCode), green: decodeSrgb(srgb.greenCode), blue: decodeSrgb(srgb.blueCode) };
}
