import { describe, expect, it } from 'vitest';
import { blandAltman } from '../../../lib/measure/bland-altman';
import { flankAveraging } from '../../../lib/measure/flank-averaging';
import { heightScaleError } from '../../../lib/measure/height-scale-error';
import { lineThrough } from '../../../lib/measure/line-through';
import { lineToJson } from '../../../lib/measure/line-to-json';
import { registerToes } from '../../../lib/measure/register-toes';
import { simplifyRing } from '../../../lib/measure/simplify-ring';
import type { RingMm } from '../../../lib/units';
import { rectangleRing } from './shapes';

const ring = (...points: readonly (readonly [number, number])[]): RingMm => points.map(([acrossMm, downMm]) => ({ acrossMm, downMm }));

describe('a simplified ring', () => {
  it('is the ring itself where it has three points, or would keep fewer', () => {
    const triangle = ring([0, 0], [3, 0.001], [6, 0]);
    expect(simplifyRing(triangle, 1)).toBe(triangle);
    const sliver = ring([0, 0], [2, 0.01], [6, 0], [3, -0.01]);
    expect(simplifyRing(sliver, 0.1)).toBe(sliver);
  });

  it('of one place written down many times keeps three of them', () => {
    expect(simplifyRing(ring([2, 3], [2, 3], [2, 3], [2, 3], [2, 3]), 0.1)).toEqual(ring([2, 3], [2, 3], [2, 3]));
  });

  it('begins with its first point and the one farthest from it, wherever on the card it lies', () => {
    const kite = ring([20, 20], [22, 19.9], [24, 20], [23, 26], [21.4, 23.1]);
    expect(simplifyRing(kite, 0.5)).toEqual(ring([20, 20], [24, 20], [23, 26]));
  });

  it('has a tolerance', () => {
    for (const toleranceMm of [-0.1, NaN]) expect(() => simplifyRing(rectangleRing(0, 0, 1, 1), toleranceMm)).toThrow(`simplifyRing: toleranceMm must be ≥ 0, received ${toleranceMm}`);
  });
});

describe('numbers at their limits', () => {
  it('a line written down keeps a point that moved in one direction only', () => {
    expect(lineToJson(ring([1, 0], [1, 1], [2, 1], [2, 1]))).toEqual([[1, 0], [1, 1], [2, 1]]);
  });

  it('a line through places that are all the same is level at their mean', () => {
    const line = lineThrough([{ x: 3, y: 1 }, { x: 3, y: 5 }]);
    expect([line(3), line(9)]).toEqual([3, 3]);
  });

  it('a camera is beyond the skin and above the card', () => {
    expect(heightScaleError(2, 202)).toBeCloseTo(0.01, 12);
    for (const [heightMm, distanceMm] of [[5, 5], [5, 4], [-5, 0], [-5, -1], [NaN, 250]]) expect(() => heightScaleError(heightMm, distanceMm)).toThrow(/distanceMm must exceed heightMm and 0/);
  });

  it('agreement of two ways is told from three pairs, not from two', () => {
    expect(blandAltman([1, 2, 3], [0, 2, 4], 2, 4.303)).toMatchObject({ pairs: 3, bias: { value: 0 }, sd: 1 });
    expect(() => blandAltman([1, 2], [0, 2], 2, 4.303)).toThrow(/at least 3 are needed, received 2 and 2/);
  });

  it('two flanks a millimetre apart, half of the wobble’s scale, keep 0.853 of it', () => {
    expect(flankAveraging(1)).toBeCloseTo(Math.sqrt((1 + Math.exp(-Math.PI / 4)) / 2), 12);
  });

  it('a plate half a millimetre larger all round leaves about half a millimetre over', () => {
    const move = registerToes(rectangleRing(30, 20, 8, 14), rectangleRing(29.5, 19.5, 9, 15));
    // A little less, as the worst fifth of the points is left out.
    expect(move?.residualMm).toBeGreaterThan(0.4);
    expect(move?.residualMm).toBeLessThan(0.5);
  });
});
