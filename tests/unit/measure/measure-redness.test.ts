import { describe, expect, it } from 'vitest';
import type { MeasureInput, Measurand, RednessPlanes } from '../../../lib/measure/measure-input';
import { measureToe } from '../../../lib/measure/measure-toe';
import { isMeasured } from '../../../lib/result';
import type { Measured } from '../../../lib/result';
import type { MapGrid } from '../../../lib/rectify/millimetre-map';
import { SIMPLE, region } from './simple-toe';
import { circleRing, rectangleRing } from './shapes';

const { grid } = SIMPLE;

function plane(excessAt: (acrossMm: number, downMm: number) => number, on: MapGrid = grid): Float32Array {
  return Float32Array.from({ length: on.widthPx * on.heightPx }, (_, index) =>
    excessAt(
      on.originAcrossMm + (index % on.widthPx) / on.pxPerMm,
      on.originDownMm + Math.floor(index / on.widthPx) / on.pxPerMm,
    ),
  );
}

/** Redness of 10 EI inside 3 mm around (56, 30), half of it at 3 mm, none beyond 4: a 2 mm wide edge. */
const excessAt = (acrossMm: number, downMm: number): number => {
  const radius = Math.hypot(acrossMm - 56, downMm - 30);
  return 10 * Math.min(1, Math.max(0, (4 - radius) / 2));
};

const planes = (excessEi: Float32Array, more: Partial<RednessPlanes> = {}): RednessPlanes => ({
  grid,
  excessEi,
  deltaA: null,
  referenceUEi: 0.5,
  referenceUDeltaA: 0.3,
  ...more,
});

const red = (redness: RednessPlanes, radius = 3): MeasureInput => ({
  ...SIMPLE,
  outlines: { ...SIMPLE.outlines, raw: null, macerated: null, erythema: region(circleRing(56, 30, radius)) },
  redness,
});

function valueOf(input: MeasureInput, key: Measurand): Measured {
  const measurement = measureToe(input).measurements[key];
  if (!isMeasured(measurement)) throw new Error(`${key} was refused: ${measurement.notMeasured}`);
  return measurement;
}

describe('redness', () => {
  it('gathers the load of the whole cone, not only of what lies inside the outline', () => {
    // A plateau of radius 2 and a slope to radius 4: the volume of a cut cone, π·h/3·(R² + R·r + r²).
    const volume = ((Math.PI * 10) / 3) * (16 + 8 + 4);
    expect(valueOf(red(planes(plane(excessAt))), 'rednessLoad').value / volume).toBeCloseTo(1, 2);
  });

  it('hardly changes the load when the outline is drawn half a millimetre tighter or wider', () => {
    const loads = [2.75, 3, 3.25].map((radius) => valueOf(red(planes(plane(excessAt)), radius), 'rednessLoad').value);
    expect(Math.max(...loads) / Math.min(...loads)).toBeLessThan(1.01);
  });

  it('means the excess inside the outline', () => {
    const flat = red(planes(plane(() => 7), { deltaA: plane(() => 3) }));
    expect(valueOf(flat, 'rednessDeltaEi').value).toBeCloseTo(7, 6);
    expect(valueOf(flat, 'rednessDeltaA').value).toBeCloseTo(3, 6);
  });

  it('never falls below the uncertainty of the reference field, however many pixels agree', () => {
    expect(valueOf(red(planes(plane(() => 7))), 'rednessDeltaEi').u).toBeGreaterThanOrEqual(0.5);
  });

  it('moves with the outline only as much as the excess differs at the edge', () => {
    const flat = measureToe(red(planes(plane(() => 7)))).budget.rednessDeltaEi;
    const sloped = measureToe(red(planes(plane(excessAt)))).budget.rednessDeltaEi;
    expect(flat?.terms.boundaryCommon).toBeCloseTo(0, 6);
    expect(sloped?.terms.boundaryCommon).toBeGreaterThan(0.2);
  });

  it('leaves nail plate and raw surface out, even where the planes have numbers there', () => {
    const input = red(planes(plane((across) => (across < 56 ? 100 : 5))));
    const covered: MeasureInput = {
      ...input,
      outlines: { ...input.outlines, nailPlate: null, raw: region(rectangleRing(40, 20, 16, 20)) },
    };
    expect(valueOf(covered, 'rednessDeltaEi').value).toBeCloseTo(5, 6);
  });

  it('counts skin paler than the reference as it is, so that noise does not add up to redness', () => {
    const checkered = plane((across, down) => ((Math.round(across * 8) + Math.round(down * 8)) % 2 === 0 ? 4 : -4));
    expect(Math.abs(valueOf(red(planes(checkered)), 'rednessLoad').value)).toBeLessThan(1);
  });

  it('finds the evidence too weak where less than half of the region has an index, or none is there', () => {
    const hidden = plane((across) => (across < 56.5 ? NaN : 5));
    for (const redness of [planes(hidden), null]) {
      const input = { ...red(planes(hidden)), redness };
      for (const key of ['rednessLoad', 'rednessDeltaEi', 'rednessDeltaA'] as const) {
        expect(measureToe(input).measurements[key]).toEqual({ notMeasured: 'evidenceTooWeak' });
      }
    }
  });

  it('refuses a plane that does not fit its map', () => {
    expect(() => measureToe(red(planes(new Float32Array(3))))).toThrow(/redness.excessEi must be 160000 long, received 3/);
  });
});
