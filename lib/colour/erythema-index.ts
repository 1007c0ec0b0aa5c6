/**
 * Erythema index: how much more green light than red light the skin takes away, as a difference of optical densities.
 * Blood absorbs green and hardly any red, so the index rises with blood; shading and exposure cancel in the ratio.
 * @param red linear light relative to white, > 0
 * @param green linear light relative to white, > 0
 * @returns EI = 100 · (log10 R − log10 G); NaN where either is not positive: there is no density of no light
 * Source: Diffey, Oliver and Farr, Br J Dermatol 1984;111:663-672 (log R_red/R_green); Yamamoto et al., Skin Res Technol
 * 2008;14:26-34 (the same from linear camera values); the factor 100 as in Takiwaki, J Med Invest 1998;44:121-126.
 * @example erythemaIndex(0.1, 0.1) // 0
 */
export function erythemaIndex(red: number, green: number): number {
  return red > 0 && green > 0 ? 100 * Math.log10(red / green) : NaN;
}
