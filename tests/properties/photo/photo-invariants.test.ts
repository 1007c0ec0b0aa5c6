import { describe, expect, it } from 'vitest';
import { convertDisplayP3ToSrgb, convertPictureP3ToSrgb } from '../../../lib/photo/display-p3';
import { plainShare } from '../../../lib/photo/plain-share';
import { turnUpright } from '../../../lib/photo/turn-upright';
import { park } from '../../unit/photo/park-miller';

const next = park(3);
const widthPx = 150;
const heightPx = 97;
const picture = { widthPx, heightPx, srgb: new Uint8Array(widthPx * heightPx * 3).map(() => 256 * next()) };
const same = (one: Uint8Array, other: Uint8Array): boolean => Buffer.compare(one, other) === 0;

describe('turning upright', () => {
  it.each([1, 2, 3, 4, 5, 7])('twice by the same mirroring gives back the picture: %d', (orientation) => {
    const back = turnUpright(turnUpright(picture, orientation), orientation);
    expect(same(back.srgb, picture.srgb)).toBe(true);
  });

  it('by a quarter and back, or four times by a quarter, gives back the picture', () => {
    expect(same(turnUpright(turnUpright(picture, 6), 8).srgb, picture.srgb)).toBe(true);
    const around = [6, 6, 6, 6].reduce(turnUpright, picture);
    expect([around.widthPx, same(around.srgb, picture.srgb)]).toEqual([widthPx, true]);
  });

  it.each([2, 3, 4, 5, 6, 7, 8])('moves pixels and changes none: %d', (orientation) => {
    const sorted = (srgb: Uint8Array) =>
      Uint32Array.from({ length: srgb.length / 3 }, (_, i) => (srgb[i * 3] << 16) | (srgb[i * 3 + 1] << 8) | srgb[i * 3 + 2]).sort();
    expect(sorted(turnUpright(picture, orientation).srgb)).toEqual(sorted(picture.srgb));
  });
});

describe('Display P3 to sRGB', () => {
  it('leaves every neutral code value where it is', () => {
    const greys = Uint8Array.from({ length: 768 }, (_, i) => Math.floor(i / 3));
    const converted = convertPictureP3ToSrgb({ widthPx: 256, heightPx: 1, srgb: greys.slice() });
    expect([...converted.srgb]).toEqual([...greys]);
  });

  it('gives for a whole picture what it gives for each colour, within half a code value and its rounding', () => {
    const converted = convertPictureP3ToSrgb({ ...picture, srgb: picture.srgb.slice() }).srgb;
    for (let i = 0; i < picture.srgb.length; i += 3) {
      const p3 = [picture.srgb[i] / 255, picture.srgb[i + 1] / 255, picture.srgb[i + 2] / 255] as const;
      convertDisplayP3ToSrgb([...p3]).forEach((signal, k) => {
        const exact = 255 * Math.min(1, Math.max(0, signal));
        expect(Math.abs(converted[i + k] - exact)).toBeLessThanOrEqual(0.75);
      });
    }
  });
});

describe('the plain share', () => {
  it('does not change when the picture is turned', () => {
    // Sides of whole squares, few enough to be all looked at: otherwise other squares are looked at after the turn.
    const square = { widthPx: 96, heightPx: 64, srgb: new Uint8Array(96 * 64 * 3).map((_, i) => (i < 9000 ? 90 : 90 + 12 * next())) };
    const shares = [1, 2, 3, 4, 5, 6, 7, 8].map((orientation) => plainShare(turnUpright(square, orientation)));
    expect(new Set(shares).size).toBe(1);
    expect(shares[0]).toBeGreaterThan(0);
    expect(shares[0]).toBeLessThan(1);
  });
});
