/**
 * Display P3 to sRGB. Both share the white point (D65) and the transfer curve of IEC 61966-2-1; only the primaries
 * differ (SMPTE EG 432-1 against ITU-R BT.709), so one matrix in linear light does it.
 */
import type { RgbPicture } from './turn-upright';

/** Primaries and white as CIE x, y (SMPTE EG 432-1; ITU-R BT.709; D65 = 0.3127, 0.3290). Matrix: P3 → XYZ → sRGB. */
const P3_TO_SRGB = [
  [1.2249401762805598, -0.22494017628055996, 0],
  [-0.042056954709688163, 1.0420569547096881, 0],
  [-0.019637554590334432, -0.078636045550631889, 1.0982736001409663],
] as const;

/** IEC 61966-2-1, from signal to light and back, both 0…1. */
const toLight = (signal: number): number => (signal <= 0.04045 ? signal / 12.92 : ((signal + 0.055) / 1.055) ** 2.4);
const toSignal = (light: number): number => (light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055);

/**
 * One Display P3 colour as sRGB, not clipped: outside 0…1 the colour cannot be shown in sRGB.
 * @param p3 signal values of red, green and blue, 0…1
 * @returns sRGB signal values; the curve is continued through zero with its sign (CSS Color 4, section 10.2)
 * @example convertDisplayP3ToSrgb([1, 1, 1]) // 1, 1, 1: both have the same white
 */
export function convertDisplayP3ToSrgb(p3: readonly [number, number, number]): [number, number, number] {
  const light = p3.map(toLight);
  const [red, green, blue] = P3_TO_SRGB.map((row) => {
    const value = row[0] * light[0] + row[1] * light[1] + row[2] * light[2];
    return Math.sign(value) * toSignal(Math.abs(value));
  });
  return [red, green, blue];
}

const LIGHT_OF_CODE = Float32Array.from({ length: 256 }, (_, code) => toLight(code / 255));

/**
 * Steps of the table from light to code value. The curve is steepest at black (3295 codes per unit of light), where
 * one step of 1/16384 is a fifth of a code value: rounding stays within one code, and neutral colours do not move.
 */
const STEPS = 16384;
const CODE_OF_LIGHT = Uint8Array.from({ length: STEPS + 1 }, (_, step) => Math.round(255 * toSignal(step / STEPS)));

/**
 * A whole Display P3 picture as sRGB, in place; colours outside sRGB are clipped to its edge.
 * @param picture Display P3 code values 0…255, RGB interleaved; its bytes are overwritten
 * @returns the same picture, now sRGB
 * Source: matrix above; curve IEC 61966-2-1.
 * @example convertPictureP3ToSrgb({ widthPx: 1, heightPx: 1, srgb: Uint8Array.of(80, 80, 80) }).srgb[0] === 80
 */
export function convertPictureP3ToSrgb(picture: RgbPicture): RgbPicture {
  const { srgb } = picture;
  const [[rr, rg], [gr, gg], [br, bg, bb]] = P3_TO_SRGB.map((row) => row.map((share) => share * STEPS));
  const half = 0.5;
  for (let i = 0; i < srgb.length; i += 3) {
    const red = LIGHT_OF_CODE[srgb[i]];
    const green = LIGHT_OF_CODE[srgb[i + 1]];
    const blue = LIGHT_OF_CODE[srgb[i + 2]];
    srgb[i] = CODE_OF_LIGHT[clampStep(rr * red + rg * green + half)];
    srgb[i + 1] = CODE_OF_LIGHT[clampStep(gr * red + gg * green + half)];
    srgb[i + 2] = CODE_OF_LIGHT[clampStep(br * red + bg * green + bb * blue + half)];
  }
  return picture;
}

/** Cuts to a whole step of the table; bit operators, because this runs 36 million times for one photo. */
function clampStep(step: number): number {
  const whole = step | 0;
  return whole < 0 ? 0 : whole > STEPS ? STEPS : whole;
}
