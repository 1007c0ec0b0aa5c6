/**
 * The light an sRGB code value stands for.
 *
 * The colour stage comes after the card and has the full set of conversions. A raster needs this one and its inverse,
 * because ink that covers half a pixel halves its light, not its code value.
 *
 * @param code sRGB code value 0…255
 * @returns relative light 0…1. Source: IEC 61966-2-1.
 * @example lightOfCode(255) // 1
 */
export function lightOfCode(code: number): number {
  const share = code / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}
