import { describe, expect, it } from 'vitest';
import { checkInput } from '../../../lib/measure/check-input';
import type { MeasureInput, Outlines, RednessPlanes, ScaleFacts } from '../../../lib/measure/measure-input';
import { SIMPLE } from './simple-toe';

const scale = (facts: Partial<ScaleFacts>): MeasureInput => ({ ...SIMPLE, scale: { ...SIMPLE.scale, ...facts } });
const outlines = (parts: Partial<Outlines>): MeasureInput => ({ ...SIMPLE, outlines: { ...SIMPLE.outlines, ...parts } });
const planes = (more: Partial<RednessPlanes>): MeasureInput => ({
  ...SIMPLE,
  redness: { grid: { ...SIMPLE.grid, widthPx: 3, heightPx: 2 }, excessEi: new Float32Array(6), deltaA: null, referenceUEi: null, referenceUDeltaA: null, ...more },
});
const axis = (across: number, down: number): MeasureInput => ({ ...SIMPLE, toeAxis: { across, down } });
const messageOf = (input: MeasureInput) => {
  try {
    return String(checkInput(input));
  } catch (error) {
    return (error as Error).message;
  }
};

describe('a call that cannot mean what it says', () => {
  it.each<[string, MeasureInput]>([
    ['scale.printRelativeU must be finite and ≥ 0, received -0.01', scale({ printRelativeU: -0.01 })],
    ['scale.distanceRelativeU must be finite and ≥ 0, received Infinity', scale({ distanceRelativeU: Infinity })],
    ['scale.homographyResidualMm must be finite and ≥ 0, received NaN', scale({ homographyResidualMm: NaN })],
    ['scale.tiltDeg must be 0…90, received -1', scale({ tiltDeg: -1 })],
    ['scale.tiltDeg must be 0…90, received 90', scale({ tiltDeg: 90 })],
    ['scale.pxPerMm must be > 0, received 0', scale({ pxPerMm: 0 })],
    ['scale.distanceMm must be null or > 0, received 0', scale({ distanceMm: 0 })],
    ['scale.distanceMm must be null or > 0, received -250', scale({ distanceMm: -250 })],
    ['toeAxis must be a unit vector, received length 5', axis(3, 4)],
    ['toeAxis must be a unit vector, received length 0.5', axis(0, 0.5)],
    ['redness.excessEi must be 6 long, received 5', planes({ excessEi: new Float32Array(5) })],
    ['redness.deltaA must be 6 long, received 7', planes({ deltaA: new Float32Array(7) })],
    ['erythema.boundaryUMm must be finite and ≥ 0, received -0.3', outlines({ erythema: { ...SIMPLE.outlines.erythema!, boundaryUMm: -0.3 } })],
    ['raw.boundaryUMm must be finite and ≥ 0, received NaN', outlines({ raw: { ...SIMPLE.outlines.raw!, boundaryUMm: NaN } })],
    ['macerated.boundaryUMm must be finite and ≥ 0, received Infinity', outlines({ macerated: { ...SIMPLE.outlines.macerated!, boundaryUMm: Infinity } })],
    ['nailFoldMargin.boundaryUMm must be finite and ≥ 0, received -1', outlines({ nailFoldMargin: { ...SIMPLE.outlines.nailFoldMargin!, boundaryUMm: -1 } })],
    ['cutEdge.boundaryUMm must be finite and ≥ 0, received -1', outlines({ cutEdge: { ...SIMPLE.outlines.cutEdge!, boundaryUMm: -1 } })],
  ])('is named: %s', (message, input) => {
    expect(messageOf(input)).toBe(`measureToe: ${message}`);
  });

  it('is none where a number is at its limit, not known, or written with three decimals', () => {
    for (const input of [scale({ printRelativeU: 0, tiltDeg: 0, homographyResidualMm: 0, distanceRelativeU: 0 }), scale({ distanceMm: null }), axis(0.707, 0.707), planes({ deltaA: new Float32Array(6) }), outlines({ raw: { ...SIMPLE.outlines.raw!, boundaryUMm: 0 } })]) {
      expect(messageOf(input)).toBe('undefined');
    }
  });
});
