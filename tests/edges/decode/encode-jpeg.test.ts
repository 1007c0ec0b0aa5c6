import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { encodeJpeg } from '../../../lib/edges/decode/encode-jpeg';
import { asymmetricPicture, meanDifference } from './made-files';

const picture = asymmetricPicture(800, 600);

describe('the derivative for serving', () => {
  it('carries an sRGB profile and no other metadata', async () => {
    const file = await encodeJpeg(picture, { maxLongEdgePx: 400, quality: 85 });
    const metadata = await sharp(file).metadata();
    expect([metadata.width, metadata.height]).toEqual([400, 300]);
    expect(metadata.icc).toBeDefined();
    expect([metadata.exif, metadata.xmp, metadata.iptc, metadata.orientation]).toEqual(Array(4).fill(undefined));
  });

  it('never enlarges, and keeps the colours', async () => {
    const file = await encodeJpeg(picture, { maxLongEdgePx: 5000, quality: 98 });
    const back = await sharp(file).raw().toBuffer();
    expect(meanDifference(back, picture.srgb)).toBeLessThan(3);
  });

  it('refuses a quality that the format does not have', async () => {
    await expect(encodeJpeg(picture, { maxLongEdgePx: 400, quality: 101 })).rejects.toThrow(/quality/);
  });
});
