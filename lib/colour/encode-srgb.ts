import { MAX_CODE, SRGB_CURVE } from './constants';

/**
 * Code value of one linear light.
 * @param light linear light, 1 = display white; values outside 0…1 continue the curve and are not clamped
 * @returns code value, 0…255 for light 0…1, not rounded
 * Source: IEC 61966-2-1:1999, 5.2.
 * @example encodeSrgb(1) // 255
 */
export function encodeSrgb(light: number): number {
  const size = Math.abs(light);
  const signal =
    size <= SRGB_CURVE.encodeBreak
      ? size * SRGB_CURVE.linearSlope
      : (1 + SRGB_CURVE.offset) * size ** (1 / SRGB_CURVE.exponent) - SRGB_CURVE.offset;
  return (light < 0 ? -signal : signal) * MAX_CODE;
}
