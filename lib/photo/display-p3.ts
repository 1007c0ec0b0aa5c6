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
 * @example convertDisplayP3ToSrgb([1, 1, 1]) // [1, 1, 1]
 */
export function convertDisplayP3ToSrgb(p3: readonly [number, number, number]): [number, number, number] {
  const light = p3.map(toLight);
  const [red, green, blue] = P3_TO_SRGB.map((row) => {
    const value = row[0] * light[0] + row[1] * light[1] + row[2] * light[2];
    return Math.sign(value) * toSignal(Math.abs(value));
  });
  return [red, green, blue];
}

/**
 * Steps of light between black and white. The curve is steepest at black (3295 codes per unit of light), where one of
 * 16384 steps is a fifth of a code value: rounding stays within one code, and neutral colours do not move.
 */
const STEPS = 16384;
/** Room for the colours outside sRGB: the matrix reaches from −0.225 to 1.225. */
const ROOM = STEPS / 4;
/** Whole numbers with eight binary places, because this runs 36 million times for one photo. */
const PLACES = 8;
const HALF_AND_ROOM = (ROOM << PLACES) + (1 << (PLACES - 1));

const CODE_OF_STEP = Uint8Array.from({ length: STEPS + 2 * ROOM }, (_, step) => {
  const light = Math.min(1, Math.max(0, (step - ROOM) / STEPS));
  return Math.round(255 * toSignal(light));
});

/** What each code value of one P3 channel adds to one sRGB channel, in steps of light with binary places. */
const [[RED_RED, RED_GREEN], [GREEN_RED, GREEN_GREEN], [BLUE_RED, BLUE_GREEN, BLUE_BLUE]] = P3_TO_SRGB.map((row) =>
  row.map((share) =>
    Int32Array.from({ length: 256 }, (_, code) => Math.round(share * toLight(code / 255) * (STEPS << PLACES))),
  ),
);

/**
 * A whole Display P3 picture as sRGB, in place; colours outside sRGB are clipped to its edge.
 * @param picture Display P3 code values 0…255, RGB interleaved; its bytes are overwritten
 * @returns the same picture, now sRGB
 * Source: matrix above; curve IEC 61966-2-1.
 * @example convertPictureP3ToSrgb({ widthPx: 1, heightPx: 1, srgb: Uint8Array.of(80, 80, 80) }).srgb[0] // 80
 */
export function convertPictureP3ToSrgb(picture: RgbPicture): RgbPicture {
  const { srgb } = picture;
  for (let i = 0; i < srgb.length; i += 3) {
    const red = srgb[i];
    const green = srgb[i + 1];
    const blue = srgb[i + 2];
    srgb[i] = CODE_OF_STEP[(RED_RED[red] + RED_GREEN[green] + HALF_AND_ROOM) >> PLACES];
    srgb[i + 1] = CODE_OF_STEP[(GREEN_RED[red] + GREEN_GREEN[green] + HALF_AND_ROOM) >> PLACES];
    srgb[i + 2] = CODE_OF_STEP[(BLUE_RED[red] + BLUE_GREEN[green] + BLUE_BLUE[blue] + HALF_AND_ROOM) >> PLACES];
  }
  return picture;
}
