/** A stripped derivative for serving and for overlays: sRGB said in a profile, no other metadata, never the original. */
import type { RgbPicture } from '../../photo/turn-upright';
import { openRgb } from './open-picture';

export interface JpegOptions {
  /** Larger pictures are made smaller; smaller ones stay as they are. */
  readonly maxLongEdgePx: number;
  /** 1…100, the scale of the common JPEG libraries. */
  readonly quality: number;
}

/** `await encodeJpeg(photo, { maxLongEdgePx: 1600, quality: 82 })` → the bytes of a JPEG file. */
export async function encodeJpeg(picture: RgbPicture, { maxLongEdgePx, quality }: JpegOptions): Promise<Uint8Array> {
  const { srgb, widthPx, heightPx } = picture;
  const jpeg = await openRgb(srgb, widthPx, heightPx)
    .resize({ width: maxLongEdgePx, height: maxLongEdgePx, fit: 'inside', withoutEnlargement: true })
    .withIccProfile('srgb')
    .jpeg({ quality })
    .toBuffer();
  return new Uint8Array(jpeg);
}
