import { describe, expect, it } from 'vitest';
import { largestOfSeveral } from '../../../lib/measure/largest-of-several';
import type { MeasureInput, Measurand, Outlines } from '../../../lib/measure/measure-input';
import { measureToe } from '../../../lib/measure/measure-toe';
import { peakTerms } from '../../../lib/measure/peak-terms';
import type { LineMm } from '../../../lib/units';
import { SIMPLE, marginLine, region } from './simple-toe';
import { circleRing, rectangleRing } from './shapes';

const TILTED: MeasureInput = { ...SIMPLE, scale: { ...SIMPLE.scale, tiltDeg: 20 }, toeAxis: { across: 0, down: 1 } };
const withOutlines = (outlines: Partial<Outlines>): MeasureInput => ({ ...TILTED, outlines: { ...TILTED.outlines, ...outlines } });
const line = (...points: readonly (readonly [number, number])[]): LineMm => points.map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
const termsOf = (input: MeasureInput, key: Measurand) => measureToe(input).budget[key]?.terms;
/** One half of an outline's variance of 0.3² mm². */
const HALF = 0.3 * Math.SQRT1_2;
/** Stretches of scale, and skin of 18° slope under a lens 20° aside, in a random direction (JCGM 100:2008, 5.1). */
const lengthTerms = (valueMm: number) => ({
  printScale: expect.closeTo(0.005 * valueMm, 3),
  homographyResidual: expect.closeTo((0.05 / 35) * valueMm, 3),
  nailHeight: expect.closeTo((1.5 / 248.5) * Math.hypot(1, 0.1) * valueMm, 3),
  lensDistortion: expect.closeTo(0.0024 * valueMm, 3),
  skinSlope: expect.closeTo(Math.tan(Math.PI / 10) * Math.tan(Math.PI / 9) * Math.SQRT1_2 * valueMm, 3),
});
/** A peak among so many stretches of 2 mm; its sampling: within half a pixel of 1/12 mm. */
const peakOf = (stretches: number, spike: number) => ({
  boundaryCommon: expect.closeTo(HALF, 6),
  boundaryLocal: expect.closeTo(HALF * largestOfSeveral(stretches).sd, 2),
  peakBias: expect.closeTo(HALF * largestOfSeveral(stretches).mean, 2),
  spike: expect.closeTo(spike, 2),
  sampling: expect.closeTo(1 / 24 / Math.sqrt(3), 6),
});

/** A circle of 3 mm is a millimetre wide after eleven steps of 0.1 mm, six on one flank; the truth lies anywhere above that level. */
const SPIKE = (3 - Math.sqrt(9 - 0.36)) / Math.sqrt(12);

describe('what lengths are doubted by', () => {
  it('a peak among places that could as well have been it: Harter 1961 for four places, a spike of 1 mm', () => {
    const terms = peakTerms({ valueMm: 5, at: { acrossMm: 0, downMm: 0 }, contendersMm: 8, supportedMm: 4 }, 0.3, 12);
    expect(terms.map(({ name, u, sensitivity = 1 }) => [name, u * sensitivity])).toEqual([
      ['boundaryCommon', expect.closeTo(HALF, 9)],
      ['boundaryLocal', expect.closeTo(HALF * Math.sqrt(0.49172), 9)],
      ['peakBias', expect.closeTo(HALF * 1.02938, 9)],
      ['spike', expect.closeTo(0.5 / Math.sqrt(3), 9)],
      ['sampling', expect.closeTo(1 / 24 / Math.sqrt(3), 9)],
    ]);
  });

  it('the reach of a circle: its edge lies within two standard deviations of the peak over 3.23 mm', () => {
    const stretches = (2 * 3 * Math.acos((3 - 2 * HALF) / 3)) / 2;
    expect(termsOf(TILTED, 'reach')).toEqual({ ...lengthTerms(6), ...peakOf(stretches, SPIKE), margin: 0.15 });
  });

  it('the 95th percentile over the edge away from the margin, of a triangle that leans on it', () => {
    // Its sides rise from 0 to 4 mm, 0.25 mm of which lean on the margin; five per cent of the rest are the front.
    const wedge = withOutlines({ erythema: region(line([50, 22], [54, 27], [50, 32])) });
    const p95 = 0.25 + 0.95 * 3.75;
    expect(measureToe(wedge).measurements.reachP95).toMatchObject({ value: expect.closeTo(p95, 1) });
    const frontMm = (0.05 * 2 * Math.hypot(4, 5) * 3.75) / 4;
    const averaging = Math.sqrt((1 + Math.exp(-Math.PI * (frontMm / 2) ** 2)) / 2);
    const value = (measureToe(wedge).measurements.reachP95 as { value: number }).value;
    expect(termsOf(wedge, 'reachP95')).toEqual({ ...lengthTerms(value), boundaryCommon: expect.closeTo(HALF, 6), boundaryLocal: expect.closeTo(HALF * averaging, 3), margin: 0.15 });
  });

  it('the proximal reach: an axis 2° off moves it by the sideways distance of its two ends', () => {
    // Behind the corner the margin comes forward again: the farthest back is its last but one.
    const cornered = withOutlines({ erythema: region(circleRing(53, 38, 3)), nailFoldMargin: marginLine(line([50, 20], [50, 34], [45, 36], [42, 35.5])) });
    expect(measureToe(cornered).measurements.proximalReach).toMatchObject({ value: expect.closeTo(5, 2) });
    const stretches = (2 * 3 * Math.acos((3 - 2 * HALF) / 3)) / 2;
    expect(termsOf(cornered, 'proximalReach')).toEqual({
      ...lengthTerms(5),
      ...peakOf(stretches, SPIKE),
      margin: 0.15,
      toeAxis: expect.closeTo((2 * Math.PI * 8) / 180, 2),
    });
  });

  it('raw tissue beyond the margin: a straight front of 8 mm and 0.42 mm of either flank', () => {
    const proud = withOutlines({ nailFoldMargin: marginLine(line([50, 20], [50, 34])), raw: region(rectangleRing(48, 22, 3.5, 8)) });
    const terms = termsOf(proud, 'rawBeyondMargin');
    expect(terms).toEqual({ ...lengthTerms(1.5), ...peakOf((8 + 4 * HALF) / 2, 0), margin: 0.15 });
    const within = withOutlines({ nailFoldMargin: marginLine(line([50, 20], [50, 34])), raw: region(rectangleRing(47, 22, 1.5, 8)) });
    expect(termsOf(within, 'rawBeyondMargin')?.printScale).toBeCloseTo(0.005 * 1.5, 3);
  });

  it('any of them, by what the model leaves over and by how people differ, relative and in millimetres', () => {
    const input: MeasureInput = { ...TILTED, modelError: { reach: { relative: 0.1, absolute: 0.8 } }, tracing: { reach: { relative: 0, absolute: 0.3 } } };
    expect(termsOf(input, 'reach')).toMatchObject({ model: expect.closeTo(Math.hypot(0.6, 0.8), 3), tracing: 0.3 });
    expect(termsOf(input, 'proximalReach')).not.toHaveProperty('model');
  });

  it('but by no scatter between passes where there was one pass', () => {
    expect(termsOf({ ...TILTED, passSpread: { reach: { sd: 2, passes: 1 } } }, 'reach')).not.toHaveProperty('methodSpread');
  });
});
