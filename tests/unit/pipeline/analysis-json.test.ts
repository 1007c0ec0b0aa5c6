import { describe, expect, it } from 'vitest';
import { gateReason } from '../../../lib/photo/reasons';
import { analysisToJson } from '../../../lib/pipeline/analysis-json';
import { compareVisits } from '../../../lib/pipeline/compare-visits';
import { isMeasured, type Measurement } from '../../../lib/result';
import { drawnAnalysis } from '../report/drawn-analysis';

const analysis = drawnAnalysis(10);
const json = analysisToJson(analysis, 'toe.jpg');

/** Every number anywhere in a value. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return value && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
}

describe('an analysis as JSON', () => {
  it('says what is in it, and survives being written and read', () => {
    expect(json).toMatchObject({ photo: 'toe.jpg', methodVersion: 'test', measured: true, reasons: [], capturedAt: '2026-03-02T19:32:31' });
    expect(JSON.parse(JSON.stringify(json))).toEqual(json);
    expect(numbersIn(json).filter((one) => !Number.isFinite(one))).toEqual([]);
  });

  it('holds no picture: planes and pixels stay behind', () => {
    expect(JSON.stringify(json).length).toBeLessThan(100_000);
    expect(JSON.stringify(json)).not.toMatch(/fieldEi|excessEi|srgb/);
  });

  it('carries the outlines of everything that was found, on the card and in millimetres', () => {
    const { outlines } = json;
    for (const key of ['toe', 'nailPlate', 'erythema', 'raw', 'referenceSkin'] as const) expect(outlines?.[key]?.length, key).toBeGreaterThan(0);
    expect(outlines?.nailFoldMargin?.length).toBeGreaterThan(10);
    expect(outlines?.macerated).toBeNull();
    expect([outlines?.treatedSide, outlines?.marginOrigin]).toEqual(['right', 'proposed']);
  });

  it('is not measured when a gate failed, and gives every number that reason', () => {
    const refused = analysisToJson({ ...analysis, segmentation: null, measurement: null, reasons: [gateReason('tilt', 41, 35)] }, 'toe.jpg');
    expect(refused).toMatchObject({ measured: false, outlines: null, budget: {} });
    expect(new Set(Object.values(refused.measurements).map((one) => JSON.stringify(one)))).toEqual(new Set(['{"notMeasured":"gateFailed"}']));
  });
});

describe('two visits compared', () => {
  const later = (area: Measurement) => ({ ...json, photo: 'later.jpg', measurements: { ...json.measurements, erythemaArea: area } });

  it('differ by now less then, beside the least difference that chance does not make (de Vet 2006: 1.96 · √(u₁² + u₂²))', () => {
    const [now, then] = [{ value: 70, u: 3, U: 6, unit: 'mm2' }, { value: 50, u: 4, U: 8, unit: 'mm2' }] as const;
    const change = compareVisits(later(now), later(then)).find(({ measurand }) => measurand === 'erythemaArea');
    expect(change).toMatchObject({ photo: 'later.jpg', difference: 20, unit: 'mm2' });
    expect(change?.smallestDetectable).toBeCloseTo(9.8, 2);
  });

  it('do not differ from themselves', () => {
    const changes = compareVisits(json, json);
    expect(changes.map(({ measurand }) => measurand)).toEqual(['erythemaArea', 'reach', 'grooveWidth', 'rawArea']);
    expect(changes.every(({ difference }) => difference === 0)).toBe(true);
  });

  it('are silent about a number that one of them lacks', () => {
    expect(isMeasured(json.measurements.erythemaArea)).toBe(true);
    const without = later({ notMeasured: 'contrastTooLow' });
    for (const changes of [compareVisits(json, without), compareVisits(without, json)]) {
      expect(changes.map(({ measurand }) => measurand)).not.toContain('erythemaArea');
    }
  });
});
