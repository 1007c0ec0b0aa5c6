import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { decodePhoto } from '../../../lib/edges/decode/decode-photo';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import {
  ADOBE_RGB_D50,
  asymmetricPicture,
  encoder,
  matrixProfile,
  meanDifference,
  plainBytes,
  plainPicture,
  withPngChunk,
} from './made-files';

const decoded = async (bytes: Uint8Array): Promise<UprightPhoto> => {
  const result = await decodePhoto(bytes);
  if (!result.decoded) throw new Error(`${result.refusal.id}: ${result.refusal.detail}`);
  return result.photo;
};
const firstPixel = (photo: UprightPhoto): number[] => [...photo.srgb.subarray(0, 3)];
const picture = asymmetricPicture();

describe('a photo with an embedded profile', () => {
  it('keeps the code values of an untagged and of an sRGB photo untouched', async () => {
    const untagged = await decoded(plainBytes(await encoder(picture).png().toBuffer()));
    const tagged = await decoded(plainBytes(await encoder(picture).withIccProfile('srgb').png().toBuffer()));
    expect([untagged.capture.colourSpace, tagged.capture.colourSpace]).toEqual(['untagged', 'srgb']);
    expect(Buffer.compare(untagged.srgb, picture.srgb)).toBe(0);
    expect(meanDifference(tagged.srgb, picture.srgb)).toBeLessThan(0.2);
  });

  it.each(['png', 'jpeg', 'webp'] as const)('brings Display P3 back to the same sRGB colours: %s', async (format) => {
    const options = format === 'png' ? {} : { quality: 98, chromaSubsampling: '4:4:4' };
    const file = await encoder(picture).withIccProfile('p3').toFormat(format, options).toBuffer();
    const photo = await decoded(plainBytes(file));
    expect(photo.capture.colourSpace).toBe('display-p3');
    expect(meanDifference(photo.srgb, picture.srgb)).toBeLessThan(2);
  });

  it('converts Display P3 within one code value of the colour engine (Little CMS, through the picture library)', async () => {
    const file = await encoder(picture).withIccProfile('p3').png().toBuffer();
    const reference = await sharp(file).raw().toBuffer();
    const photo = await decoded(plainBytes(file));
    const largest = photo.srgb.reduce((most, code, i) => Math.max(most, Math.abs(code - reference[i])), 0);
    expect(largest).toBeLessThanOrEqual(1);
  });

  it('reads Display P3 that a PNG states in code points (ITU-T H.273: primaries 12, transfer 13)', async () => {
    // W3C Web Platform Tests, css-color/display-p3-006: P3 0.465377 0.532768 0.317713 is sRGB 0.448436 0.53537 0.288113.
    const moss = plainPicture([119, 136, 81]);
    const file = withPngChunk(await encoder(moss).png().toBuffer(), 'cICP', Uint8Array.of(12, 13, 0, 1));
    const photo = await decoded(file);
    expect(photo.capture.colourSpace).toBe('display-p3');
    firstPixel(photo).forEach((code, i) => expect(Math.abs(code - [114.35, 136.52, 73.47][i])).toBeLessThan(1.2));
  });

  it.each([8, 16])('brings Adobe RGB, which no own code knows, back to sRGB: %d bit', async (bits) => {
    const profile = path.join(await mkdtemp(path.join(tmpdir(), 'profile-')), 'wide.icc');
    await writeFile(profile, matrixProfile(ADOBE_RGB_D50, 563 / 256));
    const source = bits === 16 ? encoder(picture).toColourspace('rgb16') : encoder(picture);
    const file = plainBytes(await source.withIccProfile(profile).png().toBuffer());
    const photo = await decoded(file);
    expect(photo.capture.colourSpace).toBe('other-profile');
    // Left as it is, the picture would differ by more than this.
    const asStored = await sharp(file, { ignoreIcc: true }).raw().toBuffer();
    expect(meanDifference(asStored, picture.srgb)).toBeGreaterThan(3);
    expect(meanDifference(photo.srgb, picture.srgb)).toBeLessThan(1.5);
  });

  it('converts CMYK with its profile to sRGB', async () => {
    const red = plainPicture([200, 40, 40]);
    const file = await encoder(red).withIccProfile('cmyk').jpeg({ quality: 98 }).toBuffer();
    expect((await sharp(file).metadata()).channels).toBe(4);
    const photo = await decoded(plainBytes(file));
    expect(photo.capture.colourSpace).toBe('cmyk');
    firstPixel(photo).forEach((code, i) => expect(Math.abs(code - [200, 40, 40][i])).toBeLessThan(25));
  });
});

describe('a photo with other channels than three times eight bits', () => {
  it('becomes RGB from grey, in every format that has grey', async () => {
    for (const format of ['png', 'jpeg'] as const) {
      const file = await encoder(plainPicture([90, 90, 90])).toColourspace('b-w').toFormat(format).toBuffer();
      expect((await sharp(file).metadata()).channels).toBe(1);
      expect(firstPixel(await decoded(plainBytes(file)))).toEqual([90, 90, 90]);
    }
  });

  it('becomes eight bits from sixteen, with and without Display P3', async () => {
    const wide = encoder(picture).toColourspace('rgb16');
    const plain = await decoded(plainBytes(await wide.clone().png().toBuffer()));
    expect(meanDifference(plain.srgb, picture.srgb)).toBeLessThan(0.6);
    const p3 = await decoded(plainBytes(await wide.clone().withIccProfile('p3').png().toBuffer()));
    expect(meanDifference(p3.srgb, picture.srgb)).toBeLessThan(1.5);
  });

  it.each(['png', 'webp'] as const)('stands on white where it is transparent: %s', async (format) => {
    const clear = new Uint8Array(400 * 300 * 4).map((_, i) => (i % 4 === 3 ? 0 : 30));
    const raw = { width: 400, height: 300, channels: 4 } as const;
    const file = await sharp(clear, { raw }).toFormat(format, { lossless: true }).toBuffer();
    expect(firstPixel(await decoded(plainBytes(file)))).toEqual([255, 255, 255]);
  });

  it('becomes RGB from grey with transparency', async () => {
    const clear = new Uint8Array(400 * 300 * 2).map((_, i) => (i % 2 === 1 ? 0 : 30));
    const raw = { width: 400, height: 300, channels: 2 } as const;
    const file = await sharp(clear, { raw }).toColourspace('b-w').png().toBuffer();
    expect(firstPixel(await decoded(plainBytes(file)))).toEqual([255, 255, 255]);
  });
});

describe('the bytes of the photo', () => {
  it('are three for every pixel and lie in memory of their own', async () => {
    const photo = await decoded(plainBytes(await encoder(picture).jpeg().toBuffer()));
    expect(photo.srgb.length).toBe(photo.widthPx * photo.heightPx * 3);
    expect(photo.srgb.byteLength).toBe(photo.srgb.buffer.byteLength);
    expect(Buffer.isBuffer(photo.srgb)).toBe(false);
  });

  it('do not depend on whether the file came as a Buffer out of a shared pool', async () => {
    const file = await encoder(plainPicture([10, 20, 30])).withMetadata({ orientation: 6 }).png().toBuffer();
    const pooled = Buffer.from(file);
    const { srgb, ...facts } = await decoded(pooled);
    const { srgb: otherSrgb, ...otherFacts } = await decoded(plainBytes(file));
    expect(facts).toEqual(otherFacts);
    expect(Buffer.compare(srgb, otherSrgb)).toBe(0);
    expect(facts.widthPx).toBe(300);
  });
});
