import { describe, expect, it } from 'vitest';
import { LINEAR_LIGHT } from '../../../lib/rectify/linear-light';
import type { MapGrid } from '../../../lib/rectify/millimetre-map';
import type { Homography } from '../../../lib/rectify/homography';
import { type LinearTables, resampleMap } from '../../../lib/rectify/resample-map';
import { codeOf, paintedPhoto } from './photo-of';

const SRGB: LinearTables = { red: LINEAR_LIGHT, green: LINEAR_LIGHT, blue: LINEAR_LIGHT };
const codes = Float32Array.from({ length: 256 }, (_, code) => code);
const AS_CODED: LinearTables = { red: codes, green: codes, blue: codes };
/** Camera pixel = mm · pxPerMm, shifted. */
const straight = (pxPerMm: number, column: number, row: number): Homography => [pxPerMm, 0, column, 0, pxPerMm, row, 0, 0, 1];
const gridOf = (pxPerMm: number, widthPx: number, heightPx: number): MapGrid => ({ originAcrossMm: 0, originDownMm: 0, pxPerMm, widthPx, heightPx });

describe('the photo resampled to millimetres', () => {
  it.each([0.7, 1, 1.9, 2, 3])('reproduces a linear ramp when the photo has %f pixels for one of the map', (finer) => {
    const photo = paintedPhoto(100, 60, (row, column) => [column * 2, 20 + row * 2, 40 + column + row]);
    const h = straight(8 * finer, 10.3, 12.7);
    const map = resampleMap(photo, h, gridOf(8, 20, 10), AS_CODED);
    for (let row = 0; row < 10; row++) {
      for (let column = 0; column < 20; column++) {
        const i = row * 20 + column;
        const [x, y] = [10.3 + column * finer, 12.7 + row * finer];
        expect(map.red[i]).toBeCloseTo(2 * x, 3);
        expect(map.green[i]).toBeCloseTo(20 + 2 * y, 3);
        expect(map.blue[i]).toBeCloseTo(40 + x + y, 3);
        expect(map.seen[i]).toBe(1);
      }
    }
  });

  it('averages half black, half white in light and not in code values', () => {
    const white = 250;
    const photo = paintedPhoto(64, 64, (_, column) => (column % 2 === 0 ? [0, 0, 0] : [white, white, white]));
    const map = resampleMap(photo, straight(16, 10.5, 10.5), gridOf(8, 16, 16), SRGB);
    for (const light of map.green) {
      expect(light).toBeCloseTo(LINEAR_LIGHT[white] / 2, 5);
      // The mean of the code values, 125, would be less than half as bright.
      expect(codeOf(light)).toBe(184);
    }
  });

  it('has not seen what lies outside the photo', () => {
    const photo = paintedPhoto(40, 40, () => [100, 100, 100]);
    const { seen } = resampleMap(photo, straight(8, -16, 0), gridOf(8, 40, 20), AS_CODED);
    for (let column = 0; column < 40; column++) expect(seen[5 * 40 + column]).toBe(column >= 16 ? 1 : 0);
  });

  it.each([[[255, 90, 90]], [[90, 254, 90]], [[90, 90, 255]]] as const)('has not seen what is clipped in one channel: %j', (clipped) => {
    const photo = paintedPhoto(60, 60, (row, column) => (row >= 20 && row < 30 && column >= 20 && column < 30 ? clipped : [90, 90, 90]));
    const { seen } = resampleMap(photo, straight(8, 0.4, 0.4), gridOf(8, 50, 50), AS_CODED);
    for (let row = 0; row < 50; row++) {
      for (let column = 0; column < 50; column++) {
        // A sample between two pixels is made of both: one clipped is enough.
        const touches = (k: number): boolean => k >= 19 && k < 30;
        expect(seen[row * 50 + column], `${row} ${column}`).toBe(touches(row) && touches(column) ? 0 : 1);
      }
    }
  });

  it('keeps red, green and blue in their places', () => {
    const photo = paintedPhoto(90, 30, (_, column) => [column < 30 ? 200 : 0, column >= 30 && column < 60 ? 200 : 0, column >= 60 ? 200 : 0]);
    const map = resampleMap(photo, straight(1, 0, 0), gridOf(1, 80, 20), AS_CODED);
    const at = (column: number): number[] => [map.red[5 * 80 + column], map.green[5 * 80 + column], map.blue[5 * 80 + column]];
    expect([at(10), at(45), at(75)]).toEqual([[200, 0, 0], [0, 200, 0], [0, 0, 200]]);
  });

  it('shows a shape of the same area at half, once and twice the resolution, within 0.5 %', () => {
    // A dark disc of radius 4 mm, drawn 16 times finer than a camera pixel, 10 px/mm.
    const fine = 16;
    const photo = paintedPhoto(200, 200, (row, column) => {
      let inside = 0;
      const dark = Math.hypot(row - 100, column - 100);
      if (dark < 38) inside = 1;
      else if (dark < 42) {
        for (let k = 0; k < fine * fine; k++) {
          const [r, c] = [row - 0.5 + (Math.floor(k / fine) + 0.5) / fine, column - 0.5 + ((k % fine) + 0.5) / fine];
          if (Math.hypot(r - 100.2, c - 99.7) < 40) inside += 1 / fine ** 2;
        }
      }
      const code = codeOf(0.8 - 0.7 * inside);
      return [code, code, code];
    });
    const [paper, ink] = [LINEAR_LIGHT[codeOf(0.8)], LINEAR_LIGHT[codeOf(0.1)]];
    const areas = [4, 8, 16].map((pxPerMm) => {
      const map = resampleMap(photo, straight(10, 0, 0), gridOf(pxPerMm, 18 * pxPerMm, 18 * pxPerMm), SRGB);
      return map.green.reduce((sum, light, i) => sum + map.seen[i] * (paper - light) / (paper - ink), 0) / pxPerMm ** 2;
    });
    for (const areaMm2 of areas) expect(Math.abs(areaMm2 / (Math.PI * 16) - 1)).toBeLessThan(0.005);
    expect(Math.max(...areas) / Math.min(...areas) - 1).toBeLessThan(0.005);
  });
});
