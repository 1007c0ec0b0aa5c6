import sharp from 'sharp';
import { openRgb } from './open-picture';

export interface OverlayLayers {
  /** The picture underneath, red, green, blue interleaved. */
  readonly srgb: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Paper strip to add below. */
  readonly legendPx: number;
  readonly svg: string;
}

const PAPER = { r: 252, g: 251, b: 247 };
const SVG_LOADER = { operation: ['VipsForeignLoadSvg'] };

/** Lays a drawing of our own over a picture with a strip of paper below it; the bytes of a PNG. */
export async function encodeOverlay({ srgb, widthPx, heightPx, legendPx, svg }: OverlayLayers): Promise<Uint8Array> {
  // The library would lay the drawing on before it adds the strip, hence two passes.
  const sheet = await openRgb(srgb, widthPx, heightPx).extend({ bottom: legendPx, background: PAPER }).png().toBuffer();
  return new Uint8Array(await sharp(sheet).composite([{ input: await drawing(svg) }]).png({ compressionLevel: 8 }).toBuffer());
}

/** Drawings are no photos: their loader is open only while one of ours is read. */
async function drawing(svg: string): Promise<Buffer> {
  sharp.unblock(SVG_LOADER);
  try {
    return await sharp(Buffer.from(svg)).png().toBuffer();
  } finally {
    sharp.block(SVG_LOADER);
  }
}
