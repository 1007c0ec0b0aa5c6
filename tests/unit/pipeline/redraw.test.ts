import { describe, expect, it } from 'vitest';
import { measureRedrawn } from '../../../lib/pipeline/measure-redrawn';
import { packRedrawMap, unpackRedrawMap } from '../../../lib/pipeline/pack-redraw-map';
import { redrawMap } from '../../../lib/pipeline/redraw-map';
import { isMeasured, type Measurement } from '../../../lib/result';
import { DRAWN_OUTLINES } from '../../../lib/segment/edge-cost';
import type { LineMm } from '../../../lib/units';
import { drawnAnalysis } from '../report/drawn-analysis';

const analysis = drawnAnalysis(10);
const pale = drawnAnalysis(0);
function mapOf(one = analysis) {
  const map = redrawMap(one);
  if (map === null) throw new Error('there is a map');
  return map;
}
const { input } = mapOf();
const line = (...pairs: readonly (readonly [number, number])[]): LineMm => pairs.map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
/** Seen from so far that nothing has to be straightened. */
const far = { ...input, lens: null };
/** 3 × 10 mm beside the margin of the square toe. */
const DRAWN = line([46, 24], [49, 24], [49, 34], [46, 34]);

function valueOf(one: Measurement) {
  if (!isMeasured(one)) throw new Error(one.notMeasured);
  return one;
}

describe('measuring again with drawn lines', () => {
  it('gives what the program measured where nobody has drawn', () => {
    const { measurements, budget } = measureRedrawn(input, {});
    expect(measurements).toEqual(analysis.measurement?.measurements);
    expect(budget).toEqual(analysis.measurement?.budget);
  });

  it('measures inside the drawn line, and leaves what it does not decide as it was', () => {
    const { measurements } = measureRedrawn(far, { erythema: DRAWN });
    expect(valueOf(measurements.erythemaArea).value).toBeCloseTo(30, 6);
    const before = measureRedrawn(far, {}).measurements;
    for (const key of ['grooveWidth', 'rawArea', 'maceratedArea'] as const) expect(measurements[key]).toEqual(before[key]);
  });

  it('says how far a drawn line may be off, in place of the model’s own error', () => {
    const { terms } = measureRedrawn(far, { erythema: DRAWN }).budget.erythemaArea!;
    expect(Object.keys(terms)).not.toContain('model');
    // 6–11 % between experts who trace the same picture, their middle; 26 mm of edge, 0.4 mm, half of its variance together.
    expect(terms.tracing).toBeCloseTo(0.085 * 30, 6);
    expect(terms.boundaryCommon).toBeCloseTo(26 * 0.4 * Math.SQRT1_2, 1);
  });

  it('gives numbers that the picture alone did not support, and how red it is still from the index', () => {
    expect(pale.measurement?.measurements.erythemaArea).toHaveProperty('notMeasured');
    const { measurements } = measureRedrawn({ ...mapOf(pale).input, lens: null }, { erythema: DRAWN });
    expect(valueOf(measurements.erythemaArea).value).toBeCloseTo(30, 6);
    expect(Math.abs(valueOf(measurements.rednessDeltaEi).value)).toBeLessThan(valueOf(measurements.rednessDeltaEi).U);
  });

  it('takes the reach from a drawn margin, whichever end was drawn first, and the groove from the plate to it', () => {
    const margin = line([46.5, 18], [46.5, 27], [46.5, 34]);
    const [forward, back] = [margin, [...margin].reverse()].map((nailFoldMargin) => measureRedrawn(far, { erythema: DRAWN, nailFoldMargin }).measurements);
    expect(forward).toEqual(back);
    expect(valueOf(forward.reach).value).toBeCloseTo(2.5, 2);
    expect(valueOf(forward.grooveWidth).value).not.toBeCloseTo(valueOf(analysis.measurement!.measurements.grooveWidth).value, 1);
  });
});

describe('a packed redraw map', () => {
  const map = mapOf();
  const back = unpackRedrawMap(packRedrawMap(map));

  it('measures as the unpacked one, to the hundredth of the index that is kept', () => {
    const [now, before] = [back, map].map((one) => measureRedrawn(one.input, { erythema: DRAWN }).measurements);
    expect(now.erythemaArea).toEqual(before.erythemaArea);
    expect(now.reach).toEqual(before.reach);
    expect(valueOf(now.rednessDeltaEi).value).toBeCloseTo(valueOf(before.rednessDeltaEi).value, 2);
  });

  it('has the same costs to 1/255', () => {
    for (const outline of DRAWN_OUTLINES) {
      expect(back.costs[outline].grid).toEqual(map.costs[outline].grid);
      const off = back.costs[outline].cost.map((cost, i) => Math.abs(cost - map.costs[outline].cost[i]));
      expect(off.every((one) => one <= 0.5 / 255 + 1e-6)).toBe(true);
    }
  });

  it('is not read from bytes of something else', () => {
    expect(() => unpackRedrawMap(new TextEncoder().encode('{"some":"json"}'))).toThrow(/must begin with "foldwatch redraw map 1/);
  });

  it('is none where nothing was measured', () => {
    expect(redrawMap({ ...analysis, measurement: null })).toBeNull();
  });
});
