import type { UprightPhoto } from '../../../lib/photo/upright-photo';

const CAPTURE: UprightPhoto['capture'] = {
  format: 'png', localTime: null, utcOffset: null, focalLengthMm: null, focalLength35Mm: null, lensModel: null,
  digitalZoom: null, deviceClass: 'unknown', colourSpace: 'srgb', orientationTag: 1, hasGainMap: false,
};

/** Code values as a photo that says nothing about how it was taken. */
export function photoOf(widthPx: number, heightPx: number, srgb: Uint8Array): UprightPhoto {
  return { widthPx, heightPx, srgb, sha256: '', capture: CAPTURE };
}

/** A photo painted pixel by pixel, code values. */
export function paintedPhoto(widthPx: number, heightPx: number, code: (row: number, column: number) => readonly [number, number, number]): UprightPhoto {
  const srgb = new Uint8Array(widthPx * heightPx * 3);
  for (let i = 0; i < widthPx * heightPx; i++) srgb.set(code(Math.floor(i / widthPx), i % widthPx), i * 3);
  return photoOf(widthPx, heightPx, srgb);
}

/** sRGB code values of linear light 0…1 (IEC 61966-2-1), from a fine table: renders encode millions of pixels. */
const CODES = Uint8Array.from({ length: 65536 }, (_, i) => {
  const light = i / 65535;
  return Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055));
});

export const codeOf = (light: number): number => CODES[Math.round(Math.min(1, Math.max(0, light)) * 65535)];
