import { describe, expect, it } from 'vitest';
import { edgePeak } from '../../../lib/measure/edge-peak';
import { flankAveraging } from '../../../lib/measure/flank-averaging';
import { largestOfSeveral } from '../../../lib/measure/largest-of-several';
import { resampleLine } from '../../../lib/measure/resample-line';
import { circleRing, rectangleRing } from './shapes';
import { seededNormal, seededRandom } from '../../seeded-random';

const peakOf = (ring: ReturnType<typeof circleRing>, contendMm: number) => {
  const points = resampleLine(ring, 0.1, true);
  return edgePeak([points], [points.map(({ acrossMm }) => acrossMm)], contendMm);
};

describe('the peak of an edge', () => {
  it('is supported almost wholly by a blunt front: the sagitta of a 1 mm chord', () => {
    const peak = peakOf(circleRing(0, 0, 5), 0.1);
    const sagitta = 5 - Math.sqrt(25 - 0.25);
    expect(peak?.valueMm).toBeCloseTo(5, 3);
    expect((peak?.valueMm ?? 0) - (peak?.supportedMm ?? 0)).toBeCloseTo(sagitta, 1);
  });

  it('is not supported along a finger of half a millimetre', () => {
    const peak = peakOf(rectangleRing(0, 0, 6, 0.5), 0.1);
    expect(peak?.valueMm).toBe(6);
    expect(peak?.supportedMm).toBeLessThan(0.2);
  });

  it('has as many contenders as edge lies within the given distance: the whole front of a square', () => {
    expect(peakOf(rectangleRing(0, 0, 4, 4), 0)?.contendersMm).toBeCloseTo(4, 0);
    expect(peakOf(rectangleRing(0, 0, 4, 4), 1)?.contendersMm).toBeCloseTo(6, 0);
  });
});

describe('the largest of several', () => {
  it.each([1, 2, 3, 5, 10])('agrees with 40,000 simulated draws of %d', (several) => {
    const random = seededRandom(several);
    const normal = () => seededNormal(random);
    const draws = Array.from({ length: 40_000 }, () => Math.max(...Array.from({ length: several }, normal)));
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
    const sd = Math.sqrt(draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / draws.length);
    expect(Math.abs(largestOfSeveral(several).mean - mean)).toBeLessThan(0.02);
    expect(Math.abs(largestOfSeveral(several).sd - sd)).toBeLessThan(0.02);
  });

  it('lies between its neighbours for a share of a place, and stays at ten beyond', () => {
    expect(largestOfSeveral(1.5).mean).toBeCloseTo(0.282, 3);
    expect(largestOfSeveral(2.5).mean).toBeCloseTo((0.56419 + 0.84628) / 2, 9);
    expect(largestOfSeveral(40)).toEqual(largestOfSeveral(10));
    expect(() => largestOfSeveral(0.5)).toThrow(/received 0.5/);
  });
});

describe('two flanks of a front', () => {
  it('err together on a short front and apart on a long one', () => {
    expect(flankAveraging(0)).toBe(1);
    expect(flankAveraging(20)).toBeCloseTo(Math.SQRT1_2, 12);
    expect(() => flankAveraging(-1)).toThrow(/received -1/);
  });
});
