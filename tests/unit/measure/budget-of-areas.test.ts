import { describe, expect, it } from 'vitest';
import { areaTerms } from '../../../lib/measure/area-terms';
import { USUAL_SECTION } from '../../../lib/measure/constants';
import type { MeasureInput, Measurand, Outlines } from '../../../lib/measure/measure-input';
import { measureToe } from '../../../lib/measure/measure-toe';
import { SIMPLE, LATERAL, marginLine, region } from './simple-toe';
import { rectangleRing, superellipseArc } from './shapes';

const TILTED: MeasureInput = { ...SIMPLE, scale: { ...SIMPLE.scale, tiltDeg: 20 }, toeAxis: { across: 0, down: 1 } };
const withOutlines = (outlines: Partial<Outlines>): MeasureInput => ({ ...TILTED, outlines: { ...TILTED.outlines, ...outlines } });
const termsOf = (input: MeasureInput, key: Measurand) => measureToe(input).budget[key]?.terms;
const HALF = 0.3 * Math.SQRT1_2;
/** Stretches of scale count twice in an area; skin of 18° slope under a lens 20° aside counts in both directions. */
const scaled = (areaMm2: number) => ({
  printScale: expect.closeTo(2 * 0.005 * areaMm2, 4),
  homographyResidual: expect.closeTo(2 * (0.05 / 35) * areaMm2, 4),
  nailHeight: expect.closeTo(2 * (1.5 / 248.5) * Math.hypot(1, 0.1) * areaMm2, 4),
  lensDistortion: expect.closeTo(2 * 0.0024 * areaMm2, 4),
  skinSlope: expect.closeTo(Math.tan(Math.PI / 10) * Math.tan(Math.PI / 9) * areaMm2, 4),
});
/** An edge that errs as one, wobbles over stretches of 2 mm, and passes between pixels of 1/12 mm, in or out by half of one. */
const edged = (perimeterMm: number, stretch = 1) => ({
  boundaryCommon: expect.closeTo(stretch * HALF * perimeterMm, 4),
  boundaryLocal: expect.closeTo(stretch * HALF * Math.sqrt(perimeterMm * 2), 4),
  sampling: expect.closeTo((stretch * Math.sqrt(perimeterMm * 12)) / 288 / Math.sqrt(3), 4),
});

describe('what areas are doubted by', () => {
  it('raw surface of 2 × 10 mm: its 20 mm² and its 24 mm of edge', () => {
    expect(termsOf(TILTED, 'rawArea')).toEqual({ ...scaled(20), ...edged(24) });
  });

  it('an edge shorter than the wobble errs as one', () => {
    const [common, local] = areaTerms(1.5, 0.3, 12);
    expect(local.u * (local.sensitivity ?? 1)).toBeCloseTo(common.u * (common.sensitivity ?? 1), 9);
  });

  it('the shares of a raw surface: limits between its classes and pixels of two tissues', () => {
    const share = (value: number) => ({ value, u: 0.05 });
    const { budget, measurements } = measureToe({ ...TILTED, rawTissue: { red: share(0.7), yellow: share(0.2), dark: share(0.1) } });
    for (const key of ['rawRedShare', 'rawYellowShare', 'rawDarkShare'] as const) {
      expect(budget[key]?.terms).toEqual({ classLimits: expect.closeTo(5, 9), mixedPixels: 2 });
      expect(measurements[key]).toMatchObject({ unit: '%' });
    }
  });
});

describe('the strip of fold', () => {
  const straight = withOutlines({ nailFoldMargin: marginLine(LATERAL) });

  it('is counted in quarters of a millimetre: sixteen columns of fifty-five rows between its ends', () => {
    expect(measureToe(straight).measurements.foldStripArea).toMatchObject({ value: 55 });
    expect(termsOf(straight, 'foldStripArea')).toEqual({
      ...scaled(55),
      // 14 mm of margin would make 56 mm² of strip: a quarter of a millimetre of it ends at the toe's outline.
      stripEdge: expect.closeTo(0.25 * Math.hypot(0.3, 0.15), 6),
      marginEnds: expect.closeTo(0.15 * 4 * Math.SQRT2, 6),
      sampling: expect.closeTo((1 / 8 / Math.sqrt(3)) * Math.sqrt(14 / 4), 6),
    });
  });

  it('is four millimetres wide also beside a margin that runs across the card, and has square ends', () => {
    const askew = [{ acrossMm: 44, downMm: 18 }, { acrossMm: 54, downMm: 30 }];
    const input = withOutlines({ nailFoldMargin: marginLine(askew), nailPlate: region(rectangleRing(38, 22, 8, 14)), toe: region(rectangleRing(30, 10, 34, 42)) });
    const { value } = measureToe(input).measurements.foldStripArea as { value: number };
    expect(Math.abs(value / (4 * (Math.hypot(10, 12) - 0.25)) - 1)).toBeLessThan(0.02);
  });
});

describe('area and reach on the skin', () => {
  /** A toe of 10 mm radius with its middle at 40, redness from 45 to 47 over 10 mm, a margin along its inner edge. */
  const onSide = { ...withOutlines({ toe: region(rectangleRing(30, 10, 20, 40)), erythema: region(rectangleRing(45, 20, 2, 10)), nailFoldMargin: marginLine([{ acrossMm: 45, downMm: 10 }, { acrossMm: 45, downMm: 40 }]) }), thresholdAreasMm2: [25, 17] as const };
  /** On a toe of this half width and section, with its middle moved. */
  const arcMm = (halfWidthMm = 10, changes: Partial<typeof USUAL_SECTION> = {}, movedMm = 0) => {
    const shape = { ...USUAL_SECTION, ...changes };
    const arc = (mm: number) => halfWidthMm * superellipseArc(shape, (mm - movedMm) / halfWidthMm);
    return arc(7) - arc(5);
  };
  const reachMm = arcMm();
  const stretch = reachMm / 2;
  const off = (other: number) => Math.abs(other - reachMm);
  const body = {
    toeHeight: off(arcMm(10, { flatness: 0.93 })),
    toeSquareness: off(arcMm(10, { squareness: 2.5 })),
    toeMiddle: off(arcMm(10, {}, 0.7)),
    toeWidth: off(arcMm(10 + onSide.outlines.toe!.boundaryUMm)),
  };

  it('are doubted like what is seen, in proportion to the stretch, and by the toe’s body', () => {
    const { skinSlope: _, ...scale } = scaled(10 * reachMm);
    expect(termsOf(onSide, 'unrolledArea')).toEqual({
      ...scale,
      ...edged(24, stretch),
      threshold: expect.closeTo(4 * stretch, 4),
      ...Object.fromEntries(Object.entries(body).map(([name, mm]) => [name, expect.closeTo(10 * mm, 3)])),
    });
  });

  it('reach is doubted by its straight front of 10 mm and 0.3 mm of either flank', () => {
    const terms = termsOf(onSide, 'unrolledReach');
    expect(terms).not.toHaveProperty('skinSlope');
    expect(terms).toMatchObject({
      printScale: expect.closeTo(0.005 * reachMm, 4),
      boundaryCommon: expect.closeTo(stretch * HALF, 4),
      // Harter 1961: the largest of 5.3, between n = 5 and 6.
      peakBias: expect.closeTo(stretch * HALF * (1.16296 + 0.3 * (1.26721 - 1.16296)), 2),
      margin: expect.closeTo(0.15 * stretch, 4),
      ...Object.fromEntries(Object.entries(body).map(([name, mm]) => [name, expect.closeTo(mm, 3)])),
    });
  });
});
