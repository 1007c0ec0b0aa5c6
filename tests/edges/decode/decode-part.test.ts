import { describe, expect, it } from 'vitest';
import { decodePhoto } from '../../../lib/edges/decode/decode-photo';
import { encodeJpeg } from '../../../lib/edges/decode/encode-jpeg';
import { encodeView } from '../../../lib/edges/decode/encode-view';
import type { PartPx } from '../../../lib/photo/part-of';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { seededRandom } from '../../seeded-random';
import { asymmetricPicture, encoder, meanDifference, plainBytes } from './made-files';

const SIZE_PX = { widthPx: 2000, heightPx: 1200 };
/** Not in the middle of the picture, which is decoded before it is asked for; and in it. */
const PART = { left: 311, top: 205, widthPx: 603, heightPx: 498 };
const IN_THE_MIDDLE = { left: 811, top: 405, widthPx: 303, heightPx: 298 };

const stored = (orientation: number) => encoder(asymmetricPicture(SIZE_PX.widthPx, SIZE_PX.heightPx)).withMetadata({ orientation });

async function photoOf(file: Uint8Array, part: PartPx | null): Promise<UprightPhoto> {
  const result = await decodePhoto(file, () => part);
  if (!result.decoded) throw new Error(result.refusal.detail);
  return result.photo;
}

function cut({ srgb, widthPx }: UprightPhoto, part: PartPx): Buffer {
  return Buffer.concat(
    Array.from({ length: part.heightPx }, (_, row) => srgb.subarray(((part.top + row) * widthPx + part.left) * 3).subarray(0, part.widthPx * 3)),
  );
}

describe('the part of a photo that a glance at a copy asked for', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('has the very pixels that the whole has there, turned by orientation %d', async (orientation) => {
    const file = plainBytes(await stored(orientation).jpeg({ quality: 90 }).toBuffer());
    const whole = await photoOf(file, null);
    expect(whole.part).toBeUndefined();
    for (const asked of [PART, IN_THE_MIDDLE]) {
      const partly = await photoOf(file, asked);
      const part = partly.part as PartPx;
      expect(partly).toMatchObject({ widthPx: whole.widthPx, heightPx: whole.heightPx, capture: whole.capture, sha256: whole.sha256 });
      expect(part.left).toBeLessThanOrEqual(asked.left);
      expect(part.top).toBeLessThanOrEqual(asked.top);
      expect(part.left + part.widthPx).toBeGreaterThanOrEqual(asked.left + asked.widthPx);
      expect(part.top + part.heightPx).toBeGreaterThanOrEqual(asked.top + asked.heightPx);
      expect(part.widthPx * part.heightPx).toBeLessThan(0.4 * whole.widthPx * whole.heightPx);
      expect(Buffer.compare(partly.srgb, cut(whole, part))).toBe(0);
    }
  });

  it.each([
    ['a progressive JPEG', () => stored(6).jpeg({ progressive: true })],
    ['full colour resolution', () => stored(6).jpeg({ chromaSubsampling: '4:4:4' })],
    ['Display P3', () => stored(6).withIccProfile('p3').jpeg()],
    ['CMYK', () => stored(6).withIccProfile('cmyk').jpeg()],
    ['no profile', () => encoder(asymmetricPicture(SIZE_PX.widthPx, SIZE_PX.heightPx)).jpeg()],
  ])('has them also with %s', async (_, make) => {
    const file = plainBytes(await make().toBuffer());
    const [whole, partly] = [await photoOf(file, null), await photoOf(file, PART)];
    expect(Buffer.compare(partly.srgb, partly.part ? cut(whole, partly.part) : whole.srgb)).toBe(0);
  });

  it('is not decoded from other formats', async () => {
    const file = plainBytes(await stored(6).png().toBuffer());
    expect((await photoOf(file, PART)).part).toBeUndefined();
  });

  it('comes only from a file that is sound as a whole: damage anywhere is told as it is by decoding all of it', async () => {
    const whole = await stored(1).jpeg({ quality: 90 }).toBuffer();
    const chance = seededRandom(7);
    const told = new Set<string>();
    for (let i = 0; i < 60; i++) {
      const file = plainBytes(whole);
      const at = Math.floor(file.length * (0.05 + 0.94 * chance()));
      file.fill(Math.floor(256 * chance()), at, at + 1 + Math.floor(30 * chance()));
      const [all, some] = [await decodePhoto(file), await decodePhoto(file, () => ({ ...PART, top: 0 }))];
      told.add(all.decoded ? 'decoded' : all.refusal.id);
      if (!all.decoded || !some.decoded) expect(some).toEqual(all);
      else expect(Buffer.compare(some.photo.srgb, some.photo.part ? cut(all.photo, some.photo.part) : all.photo.srgb)).toBe(0);
    }
    expect([...told].sort()).toEqual(['decoded', 'truncated']);
  });

  it('is not taken for sound because the warning went to another photo that was decoded at the same time', async () => {
    const whole = await stored(1).jpeg({ quality: 90 }).toBuffer();
    const sound = plainBytes(whole);
    const chance = seededRandom(8);
    for (let round = 0; round < 40; round++) {
      const damaged = plainBytes(whole);
      const at = Math.floor(damaged.length * (0.05 + 0.94 * chance()));
      damaged.fill(Math.floor(256 * chance()), at, at + 20);
      const alone = await decodePhoto(damaged);
      const together = await Promise.all([damaged, sound, damaged, sound].map((file) => decodePhoto(file, () => IN_THE_MIDDLE)));
      expect(together.map(({ decoded }) => decoded)).toEqual([alone.decoded, true, alone.decoded, true]);
    }
  });
});

describe('the view of a photo of which a part was decoded', () => {
  it.each([
    ['half its size', 900, () => stored(6).jpeg({ quality: 95 })],
    ['half its size, from Display P3', 900, () => stored(8).withIccProfile('p3').jpeg({ quality: 95 })],
    ['nearly its size', 1600, () => stored(5).jpeg({ quality: 95 })],
  ])('shows the whole of it at %s', async (_, maxLongEdgePx, make) => {
    const file = plainBytes(await make().toBuffer());
    const options = { maxLongEdgePx, quality: 90 };
    const [whole, partly] = [await photoOf(file, null), await photoOf(file, PART)];
    const views = await Promise.all([encodeJpeg(whole, options), encodeView(file, partly, options), encodeView(file, whole, options)].map(async (jpeg) => photoOf(await jpeg, null)));
    const [reference, view, same] = views;
    expect(partly.part).toBeDefined();
    expect([view.widthPx, view.heightPx]).toEqual([reference.widthPx, reference.heightPx]);
    expect(meanDifference(view.srgb, reference.srgb)).toBeLessThan(2);
    expect(Buffer.compare(same.srgb, reference.srgb)).toBe(0);
  });
});
