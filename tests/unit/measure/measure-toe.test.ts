import { describe, expect, it } from 'vitest';
import { MEASURAND_UNIT } from '../../../lib/measure/measure-input';
import type { MeasureInput, Measurand, Outlines } from '../../../lib/measure/measure-input';
import { measureToe } from '../../../lib/measure/measure-toe';
import { isMeasured } from '../../../lib/result';
import type { Measured } from '../../../lib/result';
import { NOTHING, SIMPLE, marginLine, region } from './simple-toe';
import { circleRing, rectangleRing } from './shapes';

const MEASURANDS = Object.keys(MEASURAND_UNIT) as Measurand[];

function valueOf(input: MeasureInput, key: Measurand): Measured {
  const measurement = measureToe(input).measurements[key];
  if (!isMeasured(measurement)) throw new Error(`${key} was refused: ${measurement.notMeasured}`);
  return measurement;
}

const withOutlines = (outlines: Partial<Outlines>): MeasureInput => ({
  ...SIMPLE,
  outlines: { ...SIMPLE.outlines, ...outlines },
});

const refusalOf = (input: MeasureInput, key: Measurand) => measureToe(input).measurements[key];

describe('a toe of simple shapes', () => {
  it('has the area of its circle and rectangles', () => {
    expect(valueOf(SIMPLE, 'erythemaArea').value).toBeCloseTo(Math.PI * 9, 1);
    expect(valueOf(SIMPLE, 'rawArea').value).toBeCloseTo(20, 9);
    expect(valueOf(SIMPLE, 'maceratedArea').value).toBeCloseTo(2, 9);
  });

  it('reaches as far as the far side of the circle lies from the margin', () => {
    expect(valueOf(SIMPLE, 'reach').value).toBeCloseTo(6, 2);
  });

  it('has a reachP95 of the 95th percentile of 3 + 3·cos φ over edge points more than 0.25 mm away', () => {
    const distances = Array.from({ length: 100_000 }, (_, index) => 3 + 3 * Math.cos((index * 2 * Math.PI) / 100_000));
    const away = distances.filter((distance) => distance > 0.25).sort((a, b) => a - b);
    expect(valueOf(SIMPLE, 'reachP95').value).toBeCloseTo(away[Math.floor(0.95 * away.length)], 1);
  });

  it('reaches toward the ankle only beyond the most proximal point of the margin', () => {
    const lower = withOutlines({ erythema: region(circleRing(53, 38, 3)) });
    expect(valueOf({ ...lower, toeAxis: { across: 0, down: 1 } }, 'proximalReach').value).toBeCloseTo(5, 2);
  });

  it('measures a proximal reach of 0 where a region was found and ends before that point', () => {
    expect(valueOf(SIMPLE, 'proximalReach').value).toBe(0);
  });

  it('follows the toe’s own axis where the toe lies askew', () => {
    const angle = Math.PI / 6;
    const askew = { across: -Math.sin(angle), down: Math.cos(angle) };
    const input: MeasureInput = {
      ...withOutlines({
        nailFoldMargin: marginLine([
          { acrossMm: 45, downMm: 20 },
          { acrossMm: 45, downMm: 25 },
        ]),
        erythema: region(circleRing(45 - 10 * Math.sin(angle), 25 + 10 * Math.cos(angle), 2)),
      }),
      toeAxis: askew,
    };
    expect(valueOf(input, 'proximalReach').value).toBeCloseTo(12, 2);
  });

  it('has a groove of 2.5 mm, everywhere', () => {
    expect(valueOf(SIMPLE, 'grooveWidth').value).toBeCloseTo(2.5, 9);
    expect(valueOf(SIMPLE, 'grooveWidthMax').value).toBeCloseTo(2.5, 9);
  });

  it('has a wedge-shaped groove of the mean and the largest of its gaps', () => {
    const wedge = [
      { acrossMm: 49, downMm: 20 },
      { acrossMm: 47, downMm: 34 },
    ];
    const input = withOutlines({ cutEdge: { line: wedge, boundaryUMm: 0.1 } });
    const cosine = 14 / Math.hypot(14, 2);
    expect(valueOf(input, 'grooveWidthMax').value).toBeCloseTo(3 * cosine, 1);
    expect(valueOf(input, 'grooveWidth').value).toBeCloseTo(2 * cosine, 1);
  });

  it('gives every measured number its unit, k = 2, and a budget that adds up to its uncertainty', () => {
    const { measurements, budget } = measureToe(SIMPLE);
    for (const key of MEASURANDS) {
      const measurement = measurements[key];
      if (!isMeasured(measurement)) continue;
      expect(measurement.unit).toBe(MEASURAND_UNIT[key]);
      expect(measurement.U).toBe(2 * measurement.u);
      const sum = Object.values(budget[key]?.terms ?? {}).reduce((total, term) => total + term ** 2, 0);
      expect(Math.sqrt(sum)).toBeCloseTo(measurement.u, 12);
      expect(measurement.u).toBeGreaterThan(0);
    }
  });
});

describe('what moves the uncertainty', () => {
  const uWith = (scale: Partial<MeasureInput['scale']>, key: Measurand): number =>
    valueOf({ ...SIMPLE, scale: { ...SIMPLE.scale, ...scale } }, key).u;

  it('counts the print scale twice in an area and once in a length', () => {
    const { budget, measurements } = measureToe({ ...SIMPLE, scale: { ...SIMPLE.scale, printRelativeU: 0.03 } });
    const area = measurements.erythemaArea as Measured;
    const reach = measurements.reach as Measured;
    expect(budget.erythemaArea?.terms.printScale).toBeCloseTo(0.06 * area.value, 9);
    expect(budget.reach?.terms.printScale).toBeCloseTo(0.03 * reach.value, 9);
  });

  it.each<[string, Partial<MeasureInput['scale']>]>([
    ['an unchecked print', { printRelativeU: 0.03 }],
    ['a leaning camera', { tiltDeg: 20 }],
    ['a near camera', { distanceMm: 120 }],
    ['an unknown distance', { distanceMm: null }],
    ['a poor fit of the card', { homographyResidualMm: 0.5 }],
    ['a coarse photo', { pxPerMm: 6 }],
  ])('%s makes area and reach less certain', (_, scale) => {
    expect(uWith(scale, 'erythemaArea')).toBeGreaterThan(valueOf(SIMPLE, 'erythemaArea').u);
    expect(uWith(scale, 'reach')).toBeGreaterThan(valueOf(SIMPLE, 'reach').u);
  });

  it('takes half of the difference between the areas at a lower and a higher threshold', () => {
    const { budget } = measureToe({ ...SIMPLE, thresholdAreasMm2: [33, 25] });
    expect(budget.erythemaArea?.terms.threshold).toBe(4);
    expect(budget.rawArea?.terms.threshold).toBeUndefined();
  });

  it('takes the scatter between passes with its few degrees of freedom', () => {
    const { budget } = measureToe({ ...SIMPLE, passSpread: { reach: { sd: 2, passes: 3 } } });
    expect(budget.reach?.terms.methodSpread).toBe(2);
    expect(budget.reach?.effectiveDof).toBeGreaterThan(2);
    expect(budget.reach?.effectiveDof).toBeLessThan(3);
  });

  it('doubts a reach that rests on a tongue narrower than a millimetre', () => {
    const circle = circleRing(53, 30, 3, 720);
    // A tongue 0.3 mm wide and 3 mm long, straight away from the margin.
    const tongue = circle.flatMap((point, index) =>
      index === 0
        ? [
            { acrossMm: 55.99, downMm: 29.85 },
            { acrossMm: 59, downMm: 29.85 },
            { acrossMm: 59, downMm: 30.15 },
            { acrossMm: 55.99, downMm: 30.15 },
          ]
        : index > 702 || index < 5
          ? []
          : [point],
    );
    const { measurements, budget } = measureToe(withOutlines({ erythema: region(tongue) }));
    expect((measurements.reach as Measured).value).toBeCloseTo(9, 1);
    expect(budget.reach?.terms.spike).toBeGreaterThan(3 / Math.sqrt(12) - 0.1);
    expect(measureToe(SIMPLE).budget.reach?.terms.spike).toBeLessThan(0.05);
  });

  it('knows a given axis better than one from the outline, and that better than the card’s down', () => {
    const beyond = withOutlines({ erythema: region(circleRing(53, 38, 3)) });
    const axisTerm = (input: MeasureInput) => measureToe(input).budget.proximalReach?.terms.toeAxis ?? NaN;
    const given = axisTerm({ ...beyond, toeAxis: { across: 0, down: 1 } });
    const outline = axisTerm(beyond);
    const card = axisTerm({ ...beyond, outlines: { ...beyond.outlines, toe: null } });
    expect(given).toBeLessThan(outline);
    expect(outline).toBeLessThan(card);
  });
});

describe('refusals', () => {
  it('gives a reason for every measurand where nothing was found, and never a number', () => {
    const { measurements, budget } = measureToe({ ...SIMPLE, outlines: NOTHING });
    for (const key of MEASURANDS) expect(measurements[key]).toHaveProperty('notMeasured');
    expect(budget).toEqual({});
  });

  it.each(['erythema', 'raw', 'macerated'] as const)('an empty %s region is not an area of zero', (name) => {
    const key = `${name}Area` as Measurand;
    for (const rings of [[], [{ ring: [], hole: false }]]) {
      const empty = withOutlines({ [name]: { rings, confidence: 1, boundaryUMm: 0.3 } });
      expect(refusalOf(empty, key)).toEqual({ notMeasured: 'noRegionFound' });
    }
  });

  it('does not measure reach without a margin, nor a groove without a plate', () => {
    expect(refusalOf(withOutlines({ nailFoldMargin: null }), 'reach')).toEqual({ notMeasured: 'marginNotFound' });
    expect(refusalOf(withOutlines({ nailFoldMargin: null }), 'proximalReach')).toEqual({ notMeasured: 'marginNotFound' });
    expect(refusalOf(withOutlines({ marginLateral: null }), 'grooveWidth')).toEqual({ notMeasured: 'marginNotFound' });
    expect(refusalOf(withOutlines({ cutEdge: null }), 'grooveWidth')).toEqual({ notMeasured: 'plateNotFound' });
  });

  it('takes neither a groove wider than any strip removed nor a stump of a line', () => {
    const far = { line: [{ acrossMm: 36, downMm: 20 }, { acrossMm: 36, downMm: 34 }], boundaryUMm: 0.1 };
    const stump = { line: [{ acrossMm: 47, downMm: 20 }, { acrossMm: 47, downMm: 21 }], boundaryUMm: 0.1 };
    for (const cutEdge of [far, stump]) {
      expect(refusalOf(withOutlines({ cutEdge }), 'grooveWidthMax')).toEqual({ notMeasured: 'evidenceTooWeak' });
    }
  });

  it('does not take what is left of a region that the border of the map cuts off', () => {
    const cut = withOutlines({ erythema: region(rectangleRing(20, 20, 6, 6)) });
    expect(refusalOf(cut, 'erythemaArea')).toEqual({ notMeasured: 'outOfView' });
    expect(refusalOf(cut, 'reach')).toEqual({ notMeasured: 'outOfView' });
  });

  it('passes on what an earlier stage already knows, whatever outlines are there', () => {
    const input: MeasureInput = { ...SIMPLE, notMeasuredBecause: { reach: 'foldHidden' } };
    expect(refusalOf(input, 'reach')).toEqual({ notMeasured: 'foldHidden' });
    expect(measureToe(input).budget.reach).toBeUndefined();
    expect(isMeasured(refusalOf(input, 'erythemaArea'))).toBe(true);
  });

  it('names field, rule and value of a call that is a bug', () => {
    const broken = (scale: Partial<MeasureInput['scale']>) => () =>
      measureToe({ ...SIMPLE, scale: { ...SIMPLE.scale, ...scale } });
    expect(broken({ pxPerMm: 0 })).toThrow('scale.pxPerMm must be > 0, received 0');
    expect(broken({ tiltDeg: 90 })).toThrow('scale.tiltDeg must be 0…90, received 90');
    expect(broken({ printRelativeU: NaN })).toThrow('scale.printRelativeU must be finite and ≥ 0, received NaN');
    expect(() => measureToe({ ...SIMPLE, toeAxis: { across: 1, down: 1 } })).toThrow(/toeAxis must be a unit vector/);
  });
});
