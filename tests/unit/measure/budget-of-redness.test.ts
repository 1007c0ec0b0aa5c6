import { describe, expect, it } from 'vitest';
import type { MeasureInput, RednessPlanes } from '../../../lib/measure/measure-input';
import { measureToe } from '../../../lib/measure/measure-toe';
import { rednessLoad } from '../../../lib/measure/redness-load';
import { SIMPLE, region } from './simple-toe';
import { circleRing, rectangleRing } from './shapes';

/** 14 × 14 mm at 20 px/mm around the middle of the redness. */
const GRID = { originAcrossMm: 49, originDownMm: 23, pxPerMm: 20, widthPx: 280, heightPx: 280 };
const plane = (valueAt: (acrossMm: number, downMm: number) => number) =>
  Float32Array.from({ length: 280 * 280 }, (_, i) => valueAt(49 + (i % 280) / 20, 23 + Math.floor(i / 280) / 20));
const FLAT = plane(() => 7);
const HALF = 0.3 * Math.SQRT1_2;

const red = (planes: Partial<RednessPlanes>, ring = circleRing(56, 30, 3)): MeasureInput => ({
  ...SIMPLE,
  scale: { ...SIMPLE.scale, tiltDeg: 20 },
  outlines: { ...SIMPLE.outlines, raw: null, macerated: null, nailPlate: null, erythema: region(ring) },
  redness: { grid: GRID, excessEi: FLAT, deltaA: FLAT, referenceUEi: 0.5, referenceUDeltaA: 0.3, ...planes },
});

describe('what redness is doubted by', () => {
  it('its mean, where it is the same everywhere: by the reference skin and a gain of 5 % alone', () => {
    const { budget, measurements } = measureToe(red({}));
    const flat = { scatter: 0, indexGain: expect.closeTo(0.35, 6), boundaryCommon: expect.closeTo(0, 6), boundaryLocal: expect.closeTo(0, 6) };
    expect(budget.rednessDeltaEi?.terms).toEqual({ ...flat, referenceField: 0.5 });
    expect(budget.rednessDeltaA?.terms).toEqual({ ...flat, referenceField: 0.3 });
    expect([measurements.rednessDeltaEi, measurements.rednessDeltaA]).toMatchObject([{ unit: '{EI}' }, { unit: '{deltaA}' }]);
  });

  it('the reference skin, where nobody says how well it is known: 1.5 EI and 0.7 of a*', () => {
    const { budget } = measureToe(red({ referenceUEi: null, referenceUDeltaA: null }));
    expect(budget.rednessDeltaEi?.terms.referenceField).toBe(1.5);
    expect(budget.rednessDeltaA?.terms.referenceField).toBe(0.7);
    expect((budget.rednessLoad?.terms.referenceField ?? 0) / (1.5 * Math.PI * 4.5 ** 2)).toBeCloseTo(1, 2);
  });

  it('its load: by scale twice, by every mm² of reference skin, and by an edge that is moved outward', () => {
    const { budget, measurements } = measureToe(red({}));
    // Redness of 3 mm radius with its rim of 1.5 mm.
    const areaMm2 = Math.PI * 4.5 ** 2;
    const { value } = measurements.rednessLoad as { value: number };
    expect(value / (7 * areaMm2)).toBeCloseTo(1, 2);
    const growth = (7 * Math.PI * ((4.5 + HALF) ** 2 - 4.5 ** 2)) / HALF;
    const terms = budget.rednessLoad?.terms ?? {};
    expect(terms).toEqual({
      printScale: expect.closeTo(0.01 * value, 6),
      homographyResidual: expect.closeTo((0.1 / 35) * value, 6),
      nailHeight: expect.closeTo(((3 * Math.hypot(1, 0.1)) / 248.5) * value, 6),
      lensDistortion: expect.closeTo(0.0048 * value, 6),
      skinSlope: expect.closeTo(Math.tan(Math.PI / 10) * Math.tan(Math.PI / 9) * value, 6),
      scatter: 0,
      referenceField: expect.closeTo((0.5 * value) / 7, 6),
      indexGain: expect.closeTo(0.05 * value, 6),
      boundaryCommon: expect.any(Number),
      boundaryLocal: expect.any(Number),
    });
    expect(Math.abs(terms.boundaryCommon / (HALF * growth) - 1)).toBeLessThan(0.02);
    // Wobble over stretches of 2 mm along an edge of 6π mm.
    expect(terms.boundaryLocal / terms.boundaryCommon).toBeCloseTo(Math.sqrt(2 / (6 * Math.PI)), 3);
    expect(measurements.rednessLoad).toMatchObject({ unit: '{EI}.mm2' });
  });

  it('has few degrees of freedom where it is patchy over squares of 2 mm, and none to count in a single one', () => {
    const patchy = plane((across, down) => 7 + 3 * Math.sin(1.3 * across) * Math.cos(1.1 * down));
    const dof = measureToe(red({ excessEi: patchy, referenceUEi: 0 })).budget.rednessDeltaEi?.effectiveDof;
    expect(dof).toBeGreaterThan(8);
    expect(dof).toBeLessThan(100);
    const small = red({ excessEi: patchy }, circleRing(56, 30, 0.5));
    expect(measureToe(small).budget.rednessDeltaEi?.effectiveDof).toBeNull();
    expect(measureToe(small).budget.rednessDeltaEi?.terms.scatter).toBeGreaterThan(0.1);
  });
});

describe('how much of a region must have an index', () => {
  /** 80 × 80 pixels whose centres lie inside. */
  const square = rectangleRing(54.025, 28.025, 4, 4);
  const known = (fromMm: number) => plane((across) => (across < fromMm - 0.001 ? NaN : 7));

  it('is half of it: exactly half is enough, a column of pixels less is not', () => {
    const half = measureToe(red({ excessEi: known(56.05) }, square)).measurements;
    expect([half.rednessDeltaEi, half.rednessLoad]).toMatchObject([{ value: 7 }, { value: expect.any(Number) }]);
    const less = measureToe(red({ excessEi: known(56.1) }, square)).measurements;
    expect([less.rednessDeltaEi, less.rednessLoad]).toEqual([{ notMeasured: 'evidenceTooWeak' }, { notMeasured: 'evidenceTooWeak' }]);
  });

  it('is not met where no pixel of it has one, nor where a* is not reported', () => {
    const nowhere = measureToe(red({ excessEi: known(99), deltaA: null })).measurements;
    for (const key of ['rednessDeltaEi', 'rednessLoad', 'rednessDeltaA'] as const) expect(nowhere[key]).toEqual({ notMeasured: 'evidenceTooWeak' });
  });
});

it('a load sums what lies in the mask and has a value, paler skin against redder, over the area of a pixel', () => {
  const grid = { originAcrossMm: 0, originDownMm: 0, pxPerMm: 2, widthPx: 4, heightPx: 1 };
  expect(rednessLoad(Float32Array.of(3, 5, NaN, -1), grid, Uint8Array.of(1, 0, 1, 1))).toBe((3 - 1) / 4);
});
