/**
 * How strongly the parts of skin absorb light, cm⁻¹.
 * Sources: S. Jacques, OMLC "Melanin" and "Skin optics" pages (1998); blood conversion of S. Prahl (OMLC): 150 g/L of
 * haemoglobin at 64 500 g/mol.
 */
import { DEOXYHAEMOGLOBIN_EXTINCTION, OXYHAEMOGLOBIN_EXTINCTION } from './haemoglobin-extinction';

const HAEMOGLOBIN_G_PER_L = 150;
const HAEMOGLOBIN_G_PER_MOL = 64500;
const LN_10 = 2.303;

/** Inside a melanosome of skin. `melanosomePerCm(500)` is about 688.7. */
export const melanosomePerCm = (nm: number): number => 1.7e12 * nm ** -3.48;

/** Skin without blood and melanin. `bloodlessSkinPerCm(500)` is about 0.702. */
export const bloodlessSkinPerCm = (nm: number): number => 0.244 + 85.3 * Math.exp(-(nm - 154) / 66.2);

/** Whole blood of the given oxygen saturation (0…1) at the index of a wavelength of the table. */
export function wholeBloodPerCm(wavelengthIndex: number, saturation: number): number {
  const extinction =
    saturation * OXYHAEMOGLOBIN_EXTINCTION[wavelengthIndex] +
    (1 - saturation) * DEOXYHAEMOGLOBIN_EXTINCTION[wavelengthIndex];
  return (LN_10 * extinction * HAEMOGLOBIN_G_PER_L) / HAEMOGLOBIN_G_PER_MOL;
}
