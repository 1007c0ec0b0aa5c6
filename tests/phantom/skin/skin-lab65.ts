/** CIE Lab, D65, 2° observer, of a reflectance; and the individual typology angle (Chardon 1991) read from it. */
import { lightSpectrum } from '../light/light-spectra';
import { spectrumToXyz } from './cie-observer';
import type { Spectrum } from './wavelengths';

export interface Lab65 {
  readonly lightness: number;
  readonly a: number;
  readonly b: number;
}

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;
const root = (t: number): number => (t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116);

/** Lab of a reflectance seen in D65, relative to the perfect white (ISO/CIE 11664-4). */
export function reflectanceToLab65(reflectance: Spectrum): Lab65 {
  const daylight = lightSpectrum('daylight');
  const white = spectrumToXyz(reflectance.map(() => 1), daylight);
  const [x, y, z] = spectrumToXyz(reflectance, daylight).map((value, i) => root(value / white[i]));
  return { lightness: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

/** ITA in degrees. `itaDeg({ lightness: 65, a: 0, b: 15 })` is 45. */
export const itaDeg = ({ lightness, b }: Lab65): number => (Math.atan2(lightness - 50, b) * 180) / Math.PI;
