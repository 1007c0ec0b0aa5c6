/**
 * The CIE 1931 2° observer as sums of skewed bell curves.
 * Source: Wyman, Sloan, Shirley 2013, "Simple Analytic Approximations to the CIE XYZ Color Matching Functions",
 * J. Computer Graphics Techniques 2(2), multi-lobe fit.
 */
import { spectrumOf, type Spectrum } from './wavelengths';

function lobe(nm: number, centreNm: number, belowNm: number, aboveNm: number): number {
  const z = (nm - centreNm) / (nm < centreNm ? belowNm : aboveNm);
  return Math.exp(-0.5 * z * z);
}

const MATCHING_X = spectrumOf(
  (nm) => 1.056 * lobe(nm, 599.8, 37.9, 31.0) + 0.362 * lobe(nm, 442.0, 16.0, 26.7) - 0.065 * lobe(nm, 501.1, 20.4, 26.2),
);
const MATCHING_Y = spectrumOf((nm) => 0.821 * lobe(nm, 568.8, 46.9, 40.5) + 0.286 * lobe(nm, 530.9, 16.3, 31.1));
const MATCHING_Z = spectrumOf((nm) => 1.217 * lobe(nm, 437.0, 11.8, 36.0) + 0.681 * lobe(nm, 459.0, 26.0, 13.8));

const dot = (a: Spectrum, b: Spectrum): number => a.reduce((sum, value, i) => sum + value * b[i], 0);

/** XYZ of a reflectance under a light, with Y = 1 for the perfect white. */
export function spectrumToXyz(reflectance: Spectrum, light: Spectrum): [number, number, number] {
  const seen = reflectance.map((r, i) => r * light[i]);
  const white = dot(light, MATCHING_Y);
  return [dot(seen, MATCHING_X) / white, dot(seen, MATCHING_Y) / white, dot(seen, MATCHING_Z) / white];
}
