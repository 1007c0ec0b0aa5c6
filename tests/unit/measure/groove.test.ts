import { describe, expect, it } from 'vitest';
import type { MeasureInput } from '../../../lib/measure/measure-input';
import { measureGroove } from '../../../lib/measure/measure-groove';
import type { LineMm } from '../../../lib/units';
import { SIMPLE } from './simple-toe';

const line = (...points: readonly (readonly [number, number])[]): LineMm => points.map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
/** Margin and cut edge with errors of 0.15 and 0.1 mm, half of whose variance is common to a whole line; a lens 20° aside. */
const between = (marginLateral: LineMm, cutEdge: LineMm): MeasureInput => ({
  ...SIMPLE,
  scale: { ...SIMPLE.scale, tiltDeg: 20 },
  outlines: { ...SIMPLE.outlines, marginLateral, cutEdge: { line: cutEdge, boundaryUMm: 0.1 } },
});
const EVEN = between(line([50, 20], [50, 34]), line([47.5, 20], [47.5, 34]));
const WEDGE = between(line([50, 20], [50, 34]), line([49, 20], [47, 34]));
const LOCAL = Math.hypot(0.15, 0.1) / Math.SQRT2;
const lengthTerms = (valueMm: number) => ({
  printScale: expect.closeTo(0.005 * valueMm, 6),
  homographyResidual: expect.closeTo((0.05 / 35) * valueMm, 6),
  nailHeight: expect.closeTo((1.5 / 248.5) * Math.hypot(1, 0.1) * valueMm, 6),
  lensDistortion: expect.closeTo(0.0024 * valueMm, 6),
});

describe('what a groove is doubted by', () => {
  const steps = {
    // A step of 1 mm under a lean in a random direction (JCGM 100:2008, 5.1).
    grooveStep: expect.closeTo(Math.tan(Math.PI / 9) / Math.SQRT2, 6),
    marginCommon: expect.closeTo(0.15 / Math.SQRT2, 6),
    cutEdgeCommon: expect.closeTo(0.1 / Math.SQRT2, 6),
  };

  it('in its mean: wobble averages out over seven stretches of 2 mm', () => {
    expect(measureGroove(EVEN).grooveWidth.budget?.terms).toEqual({ ...lengthTerms(2.5), ...steps, linesLocal: expect.closeTo(LOCAL / Math.sqrt(7), 6) });
  });

  it('in its largest gap: of 7.05 stretches that are equally wide the luckiest wins', () => {
    expect(measureGroove(EVEN).grooveWidthMax.budget?.terms).toEqual({
      ...lengthTerms(2.5),
      ...steps,
      // Harter 1961, between n = 7 and 8.
      linesLocal: expect.closeTo(LOCAL * Math.sqrt(0.39192 + 0.05 * (0.3729 - 0.39192)), 6),
      peakBias: expect.closeTo(LOCAL * (1.35218 + 0.05 * (1.4236 - 1.35218)), 6),
    });
  });

  it('but not by rivals where a wedge has one widest end of less than 2 mm', () => {
    const terms = measureGroove(WEDGE).grooveWidthMax.budget?.terms;
    expect(terms?.peakBias).toBe(0);
    expect(terms?.linesLocal).toBeCloseTo(LOCAL, 9);
  });
});

describe('what is still a groove', () => {
  const width = (input: MeasureInput) => measureGroove(input).grooveWidth.measurement;
  const weak = { notMeasured: 'evidenceTooWeak' };

  it('has both lines at least two millimetres long', () => {
    expect(width(between(line([50, 20], [50, 22]), line([47.5, 20], [47.5, 34])))).toMatchObject({ value: expect.closeTo(2.5, 9) });
    expect(width(between(line([50, 20], [50, 21.9]), line([47.5, 20], [47.5, 34])))).toEqual(weak);
    expect(width(between(line([50, 20], [50, 34]), line([49, 24], [49, 25.9])))).toEqual(weak);
    expect(width(between(line([50, 20], [50, 21.9]), line([47.5, 20], [47.5, 21.9])))).toEqual(weak);
  });

  it('is ten millimetres wide and no wider', () => {
    expect(width(between(line([50, 20], [50, 34]), line([40, 20], [40, 34])))).toMatchObject({ value: 10 });
    expect(width(between(line([50, 20], [50, 34]), line([39.9, 20], [39.9, 34])))).toEqual(weak);
  });
});
