/**
 * The lamps of the phantom. Daylight is the CIE standard illuminant D65 (ISO/CIE 11664-2, relative power at 10 nm, from
 * memory); incandescent light follows Planck at 2856 K (CIE illuminant A); shade, LED and tube are invented shapes.
 */
import { spectrumOf, WAVELENGTHS_NM, type Spectrum } from '../skin/wavelengths';

export type LightName = 'daylight' | 'shade' | 'warmLed' | 'incandescent' | 'fluorescent';
export const LIGHT_NAMES: readonly LightName[] = ['daylight', 'shade', 'warmLed', 'incandescent', 'fluorescent'];

const D65: Spectrum = [
  82.75, 91.49, 93.43, 86.68, 104.86, 117.01, 117.81, 114.86, 115.92, 108.81, 109.35, 107.8, 104.79, 107.69, 104.41,
  104.05, 100.0, 96.33, 95.79, 88.69, 90.01, 89.6, 87.7, 83.29, 83.7, 80.03, 80.21, 82.28, 78.28, 69.72, 71.61,
];

const bell = (nm: number, centreNm: number, widthNm: number): number => Math.exp(-0.5 * ((nm - centreNm) / widthNm) ** 2);

/** Planck 1900, relative power per wavelength at 2856 K; second radiation constant 1.4388e7 nm·K. */
const planck2856 = (nm: number): number => (560 / nm) ** 5 / (Math.exp(1.4388e7 / (nm * 2856)) - 1);

const POWER: Readonly<Record<LightName, Spectrum>> = {
  daylight: D65,
  shade: D65.map((power, i) => power * (560 / WAVELENGTHS_NM[i]) ** 1.3),
  warmLed: spectrumOf((nm) => 0.42 * bell(nm, 452, 10) + bell(nm, 600, nm < 600 ? 58 : 50)),
  incandescent: spectrumOf(planck2856),
  // Three phosphor bands and the mercury line at 436 nm, over a faint continuum.
  fluorescent: spectrumOf(
    (nm) => 0.06 + 0.45 * bell(nm, 448, 12) + 0.3 * bell(nm, 488, 8) + bell(nm, 544, 7) + 0.25 * bell(nm, 584, 8) + 1.05 * bell(nm, 612, 7),
  ),
};

/** Relative power of a lamp at each wavelength. */
export const lightSpectrum = (name: LightName): Spectrum => POWER[name];
