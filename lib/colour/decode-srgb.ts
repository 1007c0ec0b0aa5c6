import { MAX_CODE, SRGB_CURVE } from './constants';

/**
 * Linear light of one sRGB code value.
 * @param code code value 0…255; fractions are allowed, out-of-range values continue the curve
 * @returns linear light, 0…1 for codes 0…255; negative codes give negative light (odd symmetry)
 * Source: IEC 61966-2-1:1999, 5.2.
 * @example decodeSrgb(255) // 1
 */
export function decodeSrgb(code: number): number {
  const signal = Math.abs(code) / MAX_CODE;
  const light =
    signal <= SRGB_CURVE.decodeBreak
      ? signal / SRGB_CURVE.linearSlope
      : ((signal + SRGB_CURVE.offset) / (1 + SRGB_CURVE.offset)) ** SRGB_CURVE.exponent;
  return code < 0 ? -light : light;
}
