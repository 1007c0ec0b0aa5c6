/**
 * The sRGB code value that stands for some light: the inverse of `lightOfCode`.
 *
 * @param light relative, 0…1
 * @returns sRGB code value 0…255, rounded. Source: IEC 61966-2-1.
 * @example codeOfLight(0.5) // 188
 */
export function codeOfLight(light: number): number {
  const share = light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.round(255 * share);
}
