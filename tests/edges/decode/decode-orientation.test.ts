import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { decodePhoto } from '../../../lib/edges/decode/decode-photo';
import { asymmetricPicture, encoder, meanDifference, plainBytes, type RawPicture } from './made-files';

/**
 * How a picture has to be stored so that the tag turns it upright again: a clockwise turn, then a mirroring from left
 * to right. TIFF 6.0, tag 274: "row 0 is the visual … side, column 0 the visual … side".
 */
const STORED_FOR: Readonly<Record<number, { readonly turn: number; readonly mirror: boolean }>> = {
  1: { turn: 0, mirror: false },
  2: { turn: 0, mirror: true },
  3: { turn: 180, mirror: false },
  4: { turn: 180, mirror: true },
  5: { turn: 90, mirror: true },
  6: { turn: 270, mirror: false },
  7: { turn: 270, mirror: true },
  8: { turn: 90, mirror: false },
};

async function turned(picture: RawPicture, change: (input: Sharp) => Sharp): Promise<RawPicture> {
  const { data, info } = await change(encoder(picture)).raw().toBuffer({ resolveWithObject: true });
  return { widthPx: info.width, heightPx: info.height, srgb: new Uint8Array(data) };
}

const upright = asymmetricPicture(400, 304);

describe.each([1, 2, 3, 4, 5, 6, 7, 8])('EXIF orientation %d', (orientation) => {
  const { turn, mirror } = STORED_FOR[orientation];
  const stored = async (): Promise<RawPicture> => {
    // Two passes: within one, the library mirrors before it turns.
    const sideways = await turned(upright, (input) => input.rotate(turn));
    return mirror ? turned(sideways, (input) => input.flop()) : sideways;
  };

  it('gives the same upright pixels from a PNG, to the last bit', async () => {
    const png = await encoder(await stored()).withMetadata({ orientation }).png().toBuffer();
    const result = await decodePhoto(plainBytes(png));
    if (!result.decoded) throw new Error(result.refusal.detail);
    expect(result.photo.capture.orientationTag).toBe(orientation);
    expect([result.photo.widthPx, result.photo.heightPx]).toEqual([upright.widthPx, upright.heightPx]);
    expect(Buffer.compare(result.photo.srgb, upright.srgb)).toBe(0);
  });

  it('agrees with the picture library turning the same JPEG', async () => {
    const jpeg = await encoder(await stored()).withMetadata({ orientation }).jpeg({ quality: 95 }).toBuffer();
    const reference = await sharp(jpeg).autoOrient().raw().toBuffer();
    const result = await decodePhoto(plainBytes(jpeg));
    if (!result.decoded) throw new Error(result.refusal.detail);
    expect(Buffer.compare(result.photo.srgb, reference)).toBe(0);
    expect(meanDifference(result.photo.srgb, upright.srgb)).toBeLessThan(4);
  });
});
