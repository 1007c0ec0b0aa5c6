/**
 * Invented phones: each has its own smooth spectral sensitivities and the colour matrix that its maker would have fitted
 * to daylight. Nothing here is measured on a real camera.
 */
import { randomSource } from '../random/random-source';
import { lightSpectrum } from '../light/light-spectra';
import { spectrumToXyz } from '../skin/cie-observer';
import { skinReflectance } from '../skin/skin-reflectance';
import { spectrumOf, type Spectrum } from '../skin/wavelengths';

export type Rgb = readonly [number, number, number];
export type Matrix3 = readonly [Rgb, Rgb, Rgb];

export interface PhoneSensor {
  /** Red, green, blue sensitivity at each wavelength. */
  readonly sensitivity: readonly [Spectrum, Spectrum, Spectrum];
  /** White-balanced sensor values → linear sRGB. */
  readonly colourMatrix: Matrix3;
}

/** Linear sRGB from XYZ, D65 (IEC 61966-2-1). */
const XYZ_TO_SRGB: Matrix3 = [
  [3.2404542, -1.5371385, -0.4985314],
  [-0.969266, 1.8760108, 0.041556],
  [0.0556434, -0.2040259, 1.0572252],
];

/** A matrix times a column. */
export const times = (matrix: Matrix3, [r, g, b]: Rgb): Rgb =>
  matrix.map((row) => row[0] * r + row[1] * g + row[2] * b) as unknown as Rgb;

const bell = (nm: number, centreNm: number, widthNm: number): number => Math.exp(-0.5 * ((nm - centreNm) / widthNm) ** 2);

/** What an ideal observer calls this reflectance in daylight, as linear sRGB. */
export function daylightSrgb(reflectance: Spectrum): Rgb {
  const seen = times(XYZ_TO_SRGB, spectrumToXyz(reflectance, lightSpectrum('daylight')));
  const white = times(XYZ_TO_SRGB, spectrumToXyz(reflectance.map(() => 1), lightSpectrum('daylight')));
  return [seen[0] / white[0], seen[1] / white[1], seen[2] / white[2]];
}

/** Sensor values of a reflectance under a lamp, balanced so that the perfect white gives 1, 1, 1. */
export function balancedSensorValues(sensitivity: PhoneSensor['sensitivity'], reflectance: Spectrum, light: Spectrum): Rgb {
  return sensitivity.map((curve) => {
    let seen = 0;
    let white = 0;
    for (let i = 0; i < curve.length; i++) {
      seen += curve[i] * light[i] * reflectance[i];
      white += curve[i] * light[i];
    }
    return seen / white;
  }) as unknown as Rgb;
}

function trainingColours(seed: number): Spectrum[] {
  const random = randomSource(seed, 'matrix');
  const smooth = Array.from({ length: 40 }, () => {
    const edgeNm = random.between(430, 670);
    const low = random.between(0.05, 0.5);
    const high = random.between(0.2, 0.9);
    return spectrumOf((nm) => low + (high - low) / (1 + Math.exp((edgeNm - nm) / 22)));
  });
  const skins = [0.01, 0.04, 0.12, 0.3].flatMap((melaninShare) =>
    [0.004, 0.02].map((bloodShare) => skinReflectance({ melaninShare, bloodShare, saturation: 0.75 })),
  );
  return [...smooth, ...skins];
}

/** Least squares for one row whose entries add up to 1, so that white stays white. */
function fitRow(inputs: readonly Rgb[], targets: readonly number[]): Rgb {
  let aa = 0, ab = 0, bb = 0, at = 0, bt = 0;
  inputs.forEach(([r, g, b], i) => {
    const u = r - b;
    const v = g - b;
    const t = targets[i] - b;
    aa += u * u;
    ab += u * v;
    bb += v * v;
    at += u * t;
    bt += v * t;
  });
  const det = aa * bb - ab * ab;
  const first = (at * bb - bt * ab) / det;
  const second = (bt * aa - at * ab) / det;
  return [first, second, 1 - first - second];
}

/** The phone of a seed. */
export function phoneSensor(phoneSeed: number): PhoneSensor {
  const random = randomSource(phoneSeed, 'sensor');
  const red = [random.between(592, 608), random.between(30, 38), random.between(0.02, 0.09)];
  const green = [random.between(526, 540), random.between(33, 41)];
  const blue = [random.between(454, 466), random.between(22, 29)];
  const sensitivity = [
    spectrumOf((nm) => bell(nm, red[0], red[1]) + red[2] * bell(nm, 450, 22)),
    spectrumOf((nm) => bell(nm, green[0], green[1])),
    spectrumOf((nm) => bell(nm, blue[0], blue[1])),
  ] as const;
  const colours = trainingColours(phoneSeed);
  const inputs = colours.map((colour) => balancedSensorValues(sensitivity, colour, lightSpectrum('daylight')));
  const targets = colours.map(daylightSrgb);
  const colourMatrix = [0, 1, 2].map((c) => fitRow(inputs, targets.map((t) => t[c]))) as unknown as Matrix3;
  return { sensitivity, colourMatrix };
}
