/**
 * The only door to the picture library: three loaders for files, limits on every call, no cache. Whatever a file claims
 * to be, no other loader can be reached (drawings, documents, TIFF, and the loader that would apply a gain map).
 */
import sharp, { type Sharp } from 'sharp';
import { MAX_PIXELS } from '../../photo/constants';

sharp.cache(false);
// Two threads a picture: the entropy decoder of a JPEG is serial, more threads only raise the memory peak.
sharp.concurrency(2);
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({ operation: ['VipsForeignLoadJpeg', 'VipsForeignLoadPng', 'VipsForeignLoadWebp'] });

/** A photo decodes in tenths of a second; a file that takes this long is hostile. */
const MAX_SECONDS = 20;

/** `openPicture(bytes, { failOn: 'warning', ignoreIcc: true }).raw()` */
export function openPicture(
  bytes: Uint8Array,
  options: { readonly failOn: 'truncated' | 'warning'; readonly ignoreIcc: boolean },
): Sharp {
  return sharp(bytes, { ...options, limitInputPixels: MAX_PIXELS, pages: 1 }).timeout({ seconds: MAX_SECONDS });
}

/** Raw 8 bit sRGB code values, for encoding. `openRgb(photo.srgb, 4032, 3024).jpeg()` */
export function openRgb(srgb: Uint8Array, widthPx: number, heightPx: number): Sharp {
  const raw = { width: widthPx, height: heightPx, channels: 3 } as const;
  return sharp(srgb, { raw, limitInputPixels: MAX_PIXELS }).timeout({ seconds: MAX_SECONDS });
}
