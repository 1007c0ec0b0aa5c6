import { describe, expect, it } from 'vitest';
import { contrastToNoise } from '../../../lib/colour/contrast-to-noise';
import { a65Map } from '../../../lib/colour/a65-map';
import { convertLinearToLab65 } from '../../../lib/colour/convert-linear-to-lab65';
import { erythemaIndex } from '../../../lib/colour/erythema-index';
import { erythemaIndexMap } from '../../../lib/colour/erythema-index-map';
import { matchMap } from '../../../lib/colour/match-map';
import { noiseAtScale } from '../../../lib/colour/noise-at-scale';
import type { ReflectanceMap } from '../../../lib/colour/reflectance-map';
import { seededNormal, seededRandom } from '../../seeded-random';

const grid = { originAcrossMm: 0, originDownMm: 0, pxPerMm: 10, widthPx: 200, heightPx: 200 };
const pixels = grid.widthPx * grid.heightPx;
const mapOf = (red: number, green: number, blue: number): ReflectanceMap => ({
  grid,
  red: new Float32Array(pixels).fill(red),
  green: new Float32Array(pixels).fill(green),
  blue: new Float32Array(pixels).fill(blue),
  seen: new Uint8Array(pixels).fill(1),
});

describe('the map of the erythema index', () => {
  it('is the index of every pixel, and nothing where nothing is seen or there is no light', () => {
    const map = mapOf(0.5, 0.25, 0.2);
    map.seen[3] = 0;
    map.green[4] = 0;
    const index = erythemaIndexMap(map);
    expect(index[0]).toBeCloseTo(erythemaIndex(0.5, 0.25), 4);
    expect(index[3]).toBeNaN();
    expect(index[4]).toBeNaN();
  });
});

describe('the map of a* (D65)', () => {
  it('is a* of every wanted pixel on paper of the stated light', () => {
    const wanted = new Uint8Array(pixels);
    wanted[7] = 1;
    const a65 = a65Map(mapOf(0.5, 0.3, 0.2), { red: 0.9, green: 0.85, blue: 0.8 }, wanted);
    const expected = convertLinearToLab65({ red: 0.45, green: 0.255, blue: 0.16 });
    expect(a65[7]).toBeCloseTo(expected.a65, 3);
    expect(a65[8]).toBeNaN();
  });
});

describe('bringing a map to the baseline', () => {
  it('multiplies every pixel by the matrix, and hands back the same map where there is nothing to do', () => {
    const map = mapOf(0.5, 0.3, 0.2);
    const nothing = { leaveOneOutDeltaE: null, unmatchedDeltaE: null };
    const matched = matchMap(map, { kind: 'matrix', matrix: [[0.9, 0.1, 0], [0, 1, 0], [0, 0.5, 0.5]], ...nothing });
    expect(matched.red[5]).toBeCloseTo(0.48, 6);
    expect(matched.blue[5]).toBeCloseTo(0.25, 6);
    expect(matchMap(map, { kind: 'none', matrix: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], ...nothing })).toBe(map);
  });
});

describe('contrast to noise', () => {
  const random = seededRandom(11);
  const skin = (mean: number, sd: number, count: number) =>
    Float32Array.from({ length: count }, () => mean + sd * seededNormal(random));

  it('is the excess over the reference’s spread', () => {
    const found = contrastToNoise(skin(24, 2, 2000), skin(16, 2, 2000));
    expect(Math.abs((found?.excessEi ?? NaN) - 8)).toBeLessThan(0.3);
    expect(Math.abs((found?.spreadEi ?? NaN) - 2)).toBeLessThan(0.2);
    expect(Math.abs((found?.ratio ?? NaN) - 4)).toBeLessThan(0.5);
  });

  it('hardly moves when a tenth of the reference is highlights', () => {
    const reference = skin(16, 2, 2000);
    reference.fill(90, 0, 200);
    expect(Math.abs((contrastToNoise(skin(24, 2, 2000), reference)?.ratio ?? NaN) - 4)).toBeLessThan(0.9);
  });

  it('is negative for a region less red than the reference', () => {
    expect(contrastToNoise(skin(10, 2, 500), skin(16, 2, 500))?.ratio).toBeLessThan(-2);
  });

  it('stays finite on a perfectly even picture and refuses too few values', () => {
    expect(contrastToNoise(new Float32Array(50).fill(20), new Float32Array(50).fill(10))?.ratio).toBeCloseTo(50, 6);
    expect(contrastToNoise(new Float32Array(50), new Float32Array(29))).toBeNull();
    expect(contrastToNoise(new Float32Array(50).fill(NaN), new Float32Array(50))).toBeNull();
  });
});

describe('noise at a scale', () => {
  const random = seededRandom(12);
  const everywhere = new Uint8Array(pixels).fill(1);
  const noisy = Float32Array.from({ length: pixels }, (_, index) => 0.05 * (index % grid.widthPx) + 3 * seededNormal(random));

  it('falls with the side of the square, for noise that differs from pixel to pixel', () => {
    // Independent noise of 3: squares of 1 and 5 pixels have 3 and 3/5. The slope across is 0.05 per pixel.
    expect(Math.abs((noiseAtScale(noisy, grid, everywhere, 0.1) ?? NaN) - 3)).toBeLessThan(0.1);
    expect(Math.abs((noiseAtScale(noisy, grid, everywhere, 0.5) ?? NaN) - 0.6)).toBeLessThan(0.06);
  });

  it('does not count a slow change across the toe', () => {
    const slope = Float32Array.from({ length: pixels }, (_, index) => Math.floor(index / grid.widthPx) * 0.02);
    expect(noiseAtScale(slope, grid, everywhere, 0.2)).toBeLessThan(0.05);
  });

  it('refuses a mask that holds too little', () => {
    const corner = new Uint8Array(pixels);
    corner.fill(1, 0, 10);
    expect(noiseAtScale(noisy, grid, corner, 0.5)).toBeNull();
  });
});
