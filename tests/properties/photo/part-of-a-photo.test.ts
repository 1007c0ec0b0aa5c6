import { describe, expect, it } from 'vitest';
import { readSpot } from '../../../lib/colour/read-spot';
import { gatesBeforeCard } from '../../../lib/photo/gates-before-card';
import { NotDecoded } from '../../../lib/photo/not-decoded';
import type { PartPx } from '../../../lib/photo/part-of';
import { plainShare } from '../../../lib/photo/plain-share';
import { storedPart } from '../../../lib/photo/stored-part';
import { type RgbPicture, turnUpright } from '../../../lib/photo/turn-upright';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { widenPart } from '../../../lib/photo/widen-part';
import { greenLightAt } from '../../../lib/rectify/edge-profile';
import { shrinkToGrey } from '../../../lib/rectify/grey-image';
import type { Homography } from '../../../lib/rectify/homography';
import { LINEAR_LIGHT } from '../../../lib/rectify/linear-light';
import { resampleMap } from '../../../lib/rectify/resample-map';
import { sharpestStepPx } from '../../../lib/rectify/sharpest-step-px';
import { park } from '../../unit/photo/park-miller';
import { drawnAnalysis } from '../../unit/report/drawn-analysis';

const next = park(5);
const below = (count: number) => Math.floor(next() * count);
const { capture } = drawnAnalysis(10).photo;
const whole: UprightPhoto = { widthPx: 330, heightPx: 250, srgb: new Uint8Array(330 * 250 * 3).map(() => 90 + 30 * next()), sha256: 'aa', capture };
const tables = { red: LINEAR_LIGHT, green: LINEAR_LIGHT, blue: LINEAR_LIGHT };

function cut({ widthPx, srgb }: RgbPicture, part: PartPx): RgbPicture {
  const lines = Array.from({ length: part.heightPx }, (_, row) => {
    const from = ((part.top + row) * widthPx + part.left) * 3;
    return srgb.subarray(from, from + part.widthPx * 3);
  });
  return { widthPx: part.widthPx, heightPx: part.heightPx, srgb: new Uint8Array(Buffer.concat(lines)) };
}

const partly = (photo: UprightPhoto, part: PartPx): UprightPhoto => ({ ...photo, srgb: cut(photo, part).srgb, part });

function somePart({ widthPx, heightPx }: { widthPx: number; heightPx: number }): PartPx {
  const [left, top] = [below(widthPx - 1), below(heightPx - 1)];
  return { left, top, widthPx: 1 + below(widthPx - left), heightPx: 1 + below(heightPx - top) };
}

/** What came of it, or that more would have to be decoded. */
function outcome<Result>(read: () => Result): Result | 'not decoded' {
  try {
    return read();
  } catch (error) {
    if (error instanceof NotDecoded) return 'not decoded';
    throw error;
  }
}

describe.each([1, 2, 3, 4, 5, 6, 7, 8])('a part of a picture stored with orientation %d', (orientation) => {
  it('is, cut out as stored and turned, what it is in the upright picture', () => {
    const stored = { widthPx: 37, heightPx: 23, srgb: whole.srgb.slice(0, 37 * 23 * 3) };
    const upright = turnUpright(stored, orientation);
    for (let i = 0; i < 50; i++) {
      const part = somePart(upright);
      expect(turnUpright(cut(stored, storedPart(part, stored, orientation)), orientation)).toEqual(cut(upright, part));
    }
  });
});

it('is widened to no less than 0.6 of each side, never beyond the photo, and still holds what it held', () => {
  for (let i = 0; i < 300; i++) {
    const part = somePart(whole);
    const wide = widenPart(part, whole);
    expect(wide.left).toBeGreaterThanOrEqual(0);
    expect(wide.top).toBeGreaterThanOrEqual(0);
    expect(wide.left).toBeLessThanOrEqual(part.left);
    expect(wide.top).toBeLessThanOrEqual(part.top);
    expect(wide.left + wide.widthPx).toBeGreaterThanOrEqual(part.left + part.widthPx);
    expect(wide.top + wide.heightPx).toBeGreaterThanOrEqual(part.top + part.heightPx);
    expect(wide.left + wide.widthPx).toBeLessThanOrEqual(whole.widthPx);
    expect(wide.top + wide.heightPx).toBeLessThanOrEqual(whole.heightPx);
    expect(Math.min(wide.widthPx / whole.widthPx, wide.heightPx / whole.heightPx)).toBeGreaterThanOrEqual(0.6);
  }
});

describe('reading a photo of which a part was decoded', () => {
  const part = { left: 60, top: 40, widthPx: 200, heightPx: 150 };
  const photo = partly(whole, part);
  const isInside = (row: number, column: number) => row >= 40 && row < 189 && column >= 60 && column < 259;

  it('gives the light of the whole photo where it was decoded, asks for the rest where it was not, and finds nothing outside of it', () => {
    for (let i = 0; i < 3000; i++) {
      const [row, column] = [-20 + 290 * next(), -20 + 370 * next()];
      const expected = isInside(row, column) ? greenLightAt(whole, row, column) : row < 0 || column < 0 || row >= 250 || column >= 330 ? null : 'not decoded';
      expect(outcome(() => greenLightAt(photo, row, column))).toBe(expected);
    }
  });

  it('gives the spots of the whole photo, or asks for the rest', () => {
    const pixels: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];
    const seen = Array.from({ length: 300 }, () => {
      const centre = { acrossMm: 30 + 270 * next(), downMm: 30 + 190 * next() };
      const read = (one: UprightPhoto) => outcome(() => readSpot(one, pixels, centre, { acrossMm: 20, downMm: 20 }));
      const spot = read(photo);
      if (spot !== 'not decoded') expect(spot).toEqual(read(whole));
      return spot === 'not decoded';
    });
    expect(new Set(seen)).toEqual(new Set([true, false]));
  });

  it('gives the millimetre map of the whole photo, or asks for the rest', () => {
    const grid = { originAcrossMm: 0, originDownMm: 0, pxPerMm: 8, widthPx: 40, heightPx: 50 };
    const seen = Array.from({ length: 60 }, () => {
      const at: Homography = [18, 1, 40 + 130 * next(), -1, 18, 25 + 70 * next(), 1e-4, 0, 1];
      const map = outcome(() => resampleMap(photo, at, grid, tables));
      if (map !== 'not decoded') expect(map).toEqual(resampleMap(whole, at, grid, tables));
      return map === 'not decoded';
    });
    expect(new Set(seen)).toEqual(new Set([true, false]));
  });

  it('is not done by what looks all over the photo', () => {
    expect(outcome(() => shrinkToGrey(photo, 2))).toBe('not decoded');
    expect(outcome(() => sharpestStepPx(photo))).toBe('not decoded');
  });
});

describe('whether a photo of which a part was decoded was drawn', () => {
  it('is never thought less likely than by looking at the whole', () => {
    const half = { ...whole, srgb: whole.srgb.map((code, i) => (i % (330 * 3) < 500 ? 200 : code)) };
    for (const photo of [whole, half]) {
      for (let i = 0; i < 200; i++) expect(plainShare(partly(photo, somePart(photo)))).toBeGreaterThanOrEqual(plainShare(photo));
    }
  });

  it('is answered where the part has grain enough, and left to the whole photo where it has not', () => {
    const context = { receivedAt: null, knownSha256: new Set<string>() };
    const gates = (part: PartPx) => outcome(() => gatesBeforeCard(partly(whole, part), context));
    expect(gates({ left: 60, top: 40, widthPx: 200, heightPx: 150 })).toEqual([]);
    expect(gates({ left: 60, top: 40, widthPx: 90, heightPx: 70 })).toBe('not decoded');
  });
});
