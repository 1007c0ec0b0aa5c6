import { describe, expect, it } from 'vitest';
import { meanInMask } from '../../../lib/measure/mean-in-mask';
import type { MapGrid } from '../../../lib/rectify/millimetre-map';
import { seededNormal, seededRandom } from '../../seeded-random';

/** 16 × 16 mm at 4 px/mm: 64 squares of 2 mm, 4096 pixels. */
const GRID: MapGrid = { originAcrossMm: 0, originDownMm: 0, pxPerMm: 4, widthPx: 64, heightPx: 64 };
const ALL = new Uint8Array(64 * 64).fill(1);

/** Noise that is the same over squares of `cell` pixels. */
function noise(normal: () => number, cell: number): Float32Array {
  const cells = Array.from({ length: (64 / cell) ** 2 }, normal);
  return Float32Array.from({ length: 64 * 64 }, (_, index) => {
    const row = Math.floor(Math.floor(index / 64) / cell);
    return cells[row * (64 / cell) + Math.floor((index % 64) / cell)];
  });
}

describe('mean in a mask', () => {
  it.each([1, 2, 8])('states the real scatter of the mean for noise that is alike over %d px', (cell) => {
    const random = seededRandom(7 + cell);
    const normal = () => seededNormal(random);
    const runs = Array.from({ length: 300 }, () => meanInMask(noise(normal, cell), GRID, ALL));
    const scatter = Math.sqrt(runs.reduce((sum, run) => sum + (run?.mean ?? NaN) ** 2, 0) / runs.length);
    const stated = Math.sqrt(runs.reduce((sum, run) => sum + (run?.u ?? NaN) ** 2, 0) / runs.length);
    expect(scatter / (cell / 64)).toBeCloseTo(1, 0);
    expect(stated / scatter).toBeGreaterThan(0.85);
    expect(stated / scatter).toBeLessThan(1.15);
  });

  it('claims ten times less certainty than s/√n would where 8 × 8 pixels are alike', () => {
    const random = seededRandom(3);
    const normal = () => seededNormal(random);
    const run = meanInMask(noise(normal, 8), GRID, ALL);
    expect(run?.u ?? 0).toBeGreaterThan(7 / 64);
  });

  it('leaves out pixels without a value and says how many had one', () => {
    const plane = Float32Array.from({ length: 64 * 64 }, (_, index) => (index % 2 === 0 ? NaN : 5));
    expect(meanInMask(plane, GRID, ALL)).toMatchObject({ mean: 5, u: 0, share: 0.5, areaMm2: 128, dof: 63 });
  });

  it('takes the scatter of pixels for a mask within one square, where nothing averages out', () => {
    const mask = new Uint8Array(64 * 64);
    mask[0] = mask[1] = 1;
    const plane = new Float32Array(64 * 64);
    plane[1] = 2;
    expect(meanInMask(plane, GRID, mask)).toMatchObject({ mean: 1, u: 1, dof: null });
    plane.set([4, 6]);
    expect(meanInMask(plane, GRID, mask)).toMatchObject({ mean: 5, u: 1, dof: null });
  });

  it('scatters as two readings do: of 0 and 2 the mean is known to s / √2 = 1 (JCGM 100:2008, 4.2.3)', () => {
    const mask = Uint8Array.from({ length: 64 * 64 }, (_, index) => Number(index < 8 * 64 && index % 64 < 16));
    const plane = Float32Array.from({ length: 64 * 64 }, (_, index) => (index % 64 < 8 ? 0 : 2));
    expect(meanInMask(plane, GRID, mask)).toMatchObject({ mean: 1, u: 1, dof: 1 });
  });

  it('has no mean where no pixel has a value', () => {
    expect(meanInMask(new Float32Array(64 * 64).fill(NaN), GRID, ALL)).toBeNull();
  });
});
