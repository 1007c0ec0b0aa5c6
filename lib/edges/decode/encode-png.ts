import sharp from 'sharp';
import type { Raster } from '../../card/raster-drawing';

const MM_PER_INCH = 25.4;

/** A picture as the bytes of a PNG that says how large it is on paper. */
export async function encodePng(raster: Raster, pxPerMm: number): Promise<Uint8Array> {
  const { widthPx, heightPx, srgb } = raster;
  return sharp(srgb, { raw: { width: widthPx, height: heightPx, channels: 3 } })
    .withMetadata({ density: pxPerMm * MM_PER_INCH })
    .png()
    .toBuffer();
}
