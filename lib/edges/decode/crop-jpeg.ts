import { openPicture } from './open-picture';

export interface CropPx {
  readonly left: number;
  readonly top: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A part of one of our own pictures, at most so large: `await cropJpeg(view, { left: 0, top: 0, widthPx: 400, heightPx: 300 }, 900)`. */
export async function cropJpeg(jpeg: Uint8Array, { left, top, widthPx, heightPx }: CropPx, mostPx: number): Promise<Uint8Array> {
  const cut = await openPicture(jpeg, { failOn: 'warning', ignoreIcc: true })
    .extract({ left, top, width: widthPx, height: heightPx })
    .resize({ width: mostPx, height: mostPx, fit: 'inside', withoutEnlargement: true })
    .withIccProfile('srgb')
    .jpeg({ quality: 85 })
    .toBuffer();
  return new Uint8Array(cut);
}
