/**
 * sRGB code values as light. The colour stage comes after the card and has the full set of conversions; a raster needs
 * only these two, because ink that covers half a pixel halves its light, not its code value.
 */

/**
 * @param code sRGB code value 0…255
 * @returns relative light 0…1. Source: IEC 61966-2-1.
 * @example lightOfCode(255) // 1
 */
export function lightOfCode(code: number): number {
  const share = code / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

/**
 * @param light relative, 0…1
 * @returns sRGB code value 0…255, rounded. Source: IEC 61966-2-1.
 * @example codeOfLight(0.5) // 188
 */
export function codeOfLight(light: number): number {
  const share = light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.round(255 * share);
}
