import type { LinearRgb, SrgbU8 } from './encodings';
import { encodeSrgb } from './encode-srgb';

/**
 * Linear light to sRGB code values, neither rounded nor clamped: what lies outside 0…255 is for the caller to count.
 * @param linear linear light, display white = 1
 * @returns code values
 * Source: IEC 61966-2-1:1999, 5.2.
 * @example convertLinearToSrgb({ red: 1, green: 0, blue: 0 }).redCode // 255
 */
export function convertLinearToSrgb(linear: LinearRgb): SrgbU8 {
  return {
    redCode: encodeSrgb(linear.red),
    greenCode: encodeSrgb(linear.green),
    blueCode: encodeSrgb(linear.blue),
  };
}
