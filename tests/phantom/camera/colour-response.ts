/**
 * From what things are made of to what one phone makes of them in one light: linear sRGB with a perfect white balance.
 * Spectra are integrated once, into a table; the picture is then painted by looking up.
 */
import { lightSpectrum, type LightName } from '../light/light-spectra';
import { skinReflectance } from '../skin/skin-reflectance';
import { spectrumOf, type Spectrum } from '../skin/wavelengths';
import { balancedSensorValues, daylightSrgb, phoneSensor, times, type Matrix3, type Rgb } from './phone-sensor';

export interface ColourResponse {
  /** Writes the colour of skin into `out[at…at+2]`. Shares as in `SkinContents`. */
  skinInto(out: Float32Array, at: number, melaninShare: number, bloodShare: number, saturation: number): void;
  /** The colour of paint, ink, cloth: linear sRGB in daylight → linear sRGB in this light. */
  paint(rgb: Rgb): Rgb;
  readonly paintMatrix: Matrix3;
}

const MELANIN_STEPS = 36;
const BLOOD_STEPS = 36;
const MOST_MELANIN = 0.75;
const MOST_BLOOD = 0.4;
const SATURATIONS = [0.4, 0.7, 1] as const;

/** Three smooth bands that add up to 1: enough to give any paint a plausible spectrum. */
const BLUE_BAND = spectrumOf((nm) => 1 / (1 + Math.exp((nm - 497) / 11)));
const RED_BAND = spectrumOf((nm) => 1 / (1 + Math.exp((586 - nm) / 11)));
const GREEN_BAND = BLUE_BAND.map((blue, i) => 1 - blue - RED_BAND[i]);
const BANDS: readonly Spectrum[] = [RED_BAND, GREEN_BAND, BLUE_BAND];

const transpose = (m: readonly Rgb[]): Matrix3 => [0, 1, 2].map((r) => [m[0][r], m[1][r], m[2][r]]) as unknown as Matrix3;

function inverse([[a, b, c], [d, e, f], [g, h, i]]: Matrix3): Matrix3 {
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    [(e * i - f * h) / det, (c * h - b * i) / det, (b * f - c * e) / det],
    [(f * g - d * i) / det, (a * i - c * g) / det, (c * d - a * f) / det],
    [(d * h - e * g) / det, (b * g - a * h) / det, (a * e - b * d) / det],
  ];
}

function product(left: Matrix3, right: Matrix3): Matrix3 {
  const columns = transpose(right).map((column) => times(left, column));
  return transpose(columns);
}

function skinTable(develop: (reflectance: Spectrum) => Rgb): Float32Array {
  const table = new Float32Array(SATURATIONS.length * BLOOD_STEPS * MELANIN_STEPS * 3);
  let at = 0;
  for (const saturation of SATURATIONS) {
    for (let b = 0; b < BLOOD_STEPS; b++) {
      for (let m = 0; m < MELANIN_STEPS; m++, at += 3) {
        const bloodShare = MOST_BLOOD * (b / (BLOOD_STEPS - 1)) ** 2;
        const melaninShare = MOST_MELANIN * (m / (MELANIN_STEPS - 1)) ** 2;
        table.set(develop(skinReflectance({ melaninShare, bloodShare, saturation })), at);
      }
    }
  }
  return table;
}

const kept = new Map<string, ColourResponse>();

/** What the phone of a seed makes of things in a lamp's light; the last few dozen are kept. */
export function colourResponse(phoneSeed: number, light: LightName): ColourResponse {
  const key = `${phoneSeed} ${light}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const response = integrate(phoneSeed, light);
  if (kept.size > 60) kept.clear();
  kept.set(key, response);
  return response;
}

function integrate(phoneSeed: number, light: LightName): ColourResponse {
  const sensor = phoneSensor(phoneSeed);
  const power = lightSpectrum(light);
  const develop = (reflectance: Spectrum): Rgb =>
    times(sensor.colourMatrix, balancedSensorValues(sensor.sensitivity, reflectance, power));
  const paintMatrix = product(transpose(BANDS.map(develop)), inverse(transpose(BANDS.map(daylightSrgb))));
  const table = skinTable(develop);
  return {
    paintMatrix,
    paint: (rgb) => times(paintMatrix, rgb),
    skinInto(out, at, melaninShare, bloodShare, saturation) {
      const m = Math.sqrt(Math.min(melaninShare, MOST_MELANIN * 0.999) / MOST_MELANIN) * (MELANIN_STEPS - 1);
      const b = Math.sqrt(Math.min(bloodShare, MOST_BLOOD * 0.999) / MOST_BLOOD) * (BLOOD_STEPS - 1);
      const s = Math.min(1.999, Math.max(0, (saturation - SATURATIONS[0]) / (SATURATIONS[1] - SATURATIONS[0])));
      const m0 = m | 0;
      const b0 = b | 0;
      const s0 = s | 0;
      const fm = m - m0;
      const fb = b - b0;
      const fs = s - s0;
      const row = MELANIN_STEPS * 3;
      const plane = row * BLOOD_STEPS;
      const base = s0 * plane + b0 * row + m0 * 3;
      for (let c = 0; c < 3; c++) {
        const i = base + c;
        const low0 = table[i] + (table[i + 3] - table[i]) * fm;
        const low1 = table[i + row] + (table[i + row + 3] - table[i + row]) * fm;
        const j = i + plane;
        const high0 = table[j] + (table[j + 3] - table[j]) * fm;
        const high1 = table[j + row] + (table[j + row + 3] - table[j + row]) * fm;
        const low = low0 + (low1 - low0) * fb;
        const high = high0 + (high1 - high0) * fb;
        out[at + c] = low + (high - low) * fs;
      }
    },
  };
}
