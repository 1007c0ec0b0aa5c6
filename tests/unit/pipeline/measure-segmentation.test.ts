import { describe, expect, it } from 'vitest';
import { MEASURAND_UNIT, type Measurand } from '../../../lib/measure/measure-input';
import { measureSegmentation } from '../../../lib/pipeline/measure-segmentation';
import { isMeasured } from '../../../lib/result';
import { segmentToe } from '../../../lib/segment/segment-toe';
import type { Segmentation } from '../../../lib/segment/segmentation';
import { STRAIGHT_CARD } from '../report/drawn-analysis';
import { drawFields } from '../segment/draw-fields';
import { GRID, SQUARE_TOE, squareToeColours } from '../segment/square-toe';

const fields = drawFields(GRID, SQUARE_TOE);
const colours = squareToeColours(fields, 10);
const found = segmentToe(colours, fields);
const measure = (changed: Partial<Segmentation>) => measureSegmentation({ ...found, ...changed }, STRAIGHT_CARD, fields, colours.erythemaIndex).measurements;
const REDNESS = ['erythemaArea', 'rednessLoad', 'reach', 'reachP95', 'rednessDeltaEi', 'unrolledArea', 'unrolledReach'] as const;

const evidence = (verdict: 'supported' | 'weak' | 'tooDark'): Segmentation['evidence'] => found.evidence && { ...found.evidence, verdict };
/** Skin that scatters by so much, with a typology angle of so much. */
const reference = (noiseEi: number, angleDeg: number): Segmentation['reference'] =>
  found.reference && { ...found.reference, noiseEi, ita: { ...found.reference.ita, angleDeg } };

describe('redness that the picture supports', () => {
  const measurements = measure({});

  it('is measured near the drawn shape, within its expanded uncertainty', () => {
    const drawn = { erythemaArea: 4 * 14, reach: Math.hypot(4, 2), grooveWidth: 2, rawArea: 9 };
    for (const [key, truth] of Object.entries(drawn)) {
      const one = measurements[key as Measurand];
      expect(isMeasured(one), key).toBe(true);
      if (isMeasured(one)) expect(Math.abs(one.value - truth), key).toBeLessThan(one.U);
    }
  });

  it('is in view where its edge lies on the border of the part that was cut out of the map', () => {
    const left = Math.min(...(found.erythema?.rings ?? []).flatMap(({ ring }) => ring.map((point) => point.acrossMm)));
    const cut = measure({ grid: { ...GRID, originAcrossMm: left } });
    for (const key of ['erythemaArea', 'reach', 'unrolledArea'] as const) expect(cut[key], key).toEqual(measurements[key]);
  });

  it('comes with every measurand: a value above zero in its unit, or a reason', () => {
    expect(Object.keys(measurements).sort()).toEqual(Object.keys(MEASURAND_UNIT).sort());
    for (const [key, one] of Object.entries(measurements)) {
      if (!isMeasured(one)) expect(one.notMeasured).toMatch(/^[a-zA-Z]+$/);
      else expect([one.unit, one.value > 0 || MAY_BE_NONE.has(key)], key).toEqual([MEASURAND_UNIT[key as Measurand], true]);
    }
  });
});

/** Shares of what was found, and distances with a sign, may be nothing or less. */
const MAY_BE_NONE = new Set(['rawRedShare', 'rawYellowShare', 'rawDarkShare', 'rawBeyondMargin', 'foldBulge']);

describe('redness that must not be reported', () => {
  it.each<[string, Partial<Segmentation>, string]>([
    ['the step of the index is too small', { evidence: evidence('weak') }, 'evidenceTooWeak'],
    ['the skin is too dark to judge', { evidence: evidence('tooDark') }, 'contrastTooLow'],
    ['nothing could be compared', { evidence: null }, 'evidenceTooWeak'],
    ['the model itself doubts the region', { erythema: found.erythema && { ...found.erythema, confidence: 0.05 } }, 'evidenceTooWeak'],
    ['no region was found on skin that would show it', { erythema: null, evidence: null, reference: reference(0.5, 40) }, 'noRegionFound'],
    ['no region was found on skin that scatters too much', { erythema: null, evidence: null, reference: reference(20, 40) }, 'contrastTooLow'],
    ['no region was found on dark skin', { erythema: null, evidence: null, reference: reference(0.5, -60) }, 'contrastTooLow'],
    ['there is no plain skin to compare with', { reference: null, excessEi: null, evidence: null }, 'contrastTooLow'],
    ['the margin was not found', { nailFoldMargin: null, marginLateral: null, cutEdge: null }, 'marginNotFound'],
    ['the toe was not found', { toe: null }, 'toeNotFound'],
  ])('gives the reason in place of every redness number when %s', (_, changed, reason) => {
    const measurements = measure(changed);
    for (const key of REDNESS) expect(measurements[key], key).toEqual({ notMeasured: reason });
  });

  it('takes nothing away from the groove and the wound, which have their own reasons', () => {
    const measurements = measure({ evidence: evidence('weak') });
    expect([measurements.grooveWidth, measurements.rawArea].every(isMeasured)).toBe(true);
  });

  it('leaves the groove without a width when no plate was found', () => {
    const measurements = measure({ nailPlate: null, cutEdge: null });
    expect([measurements.grooveWidth, measurements.grooveWidthMax]).toEqual([{ notMeasured: 'plateNotFound' }, { notMeasured: 'plateNotFound' }]);
  });
});
