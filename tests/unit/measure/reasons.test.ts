import { describe, expect, it } from 'vitest';
import type { MeasureInput, Measurand, Outlines } from '../../../lib/measure/measure-input';
import { measureToe } from '../../../lib/measure/measure-toe';
import { NOTHING, SIMPLE, LATERAL, marginLine, region } from './simple-toe';
import { rectangleRing } from './shapes';

const withOutlines = (outlines: Partial<Outlines>): MeasureInput => ({ ...SIMPLE, outlines: { ...SIMPLE.outlines, ...outlines } });
const reasonsOf = (input: MeasureInput, keys: readonly Measurand[]) => {
  const { measurements } = measureToe(input);
  return keys.map((key) => measurements[key]);
};
const each = (keys: readonly Measurand[], notMeasured: string) => keys.map(() => ({ notMeasured }));
const OF_REDNESS: readonly Measurand[] = ['erythemaArea', 'rednessLoad', 'reach', 'reachP95', 'proximalReach', 'unrolledArea', 'unrolledReach', 'rednessDeltaEi', 'rednessDeltaA'];
const cutOff = region(rectangleRing(20, 20, 6, 6));

describe('the reason that stands for a number', () => {
  it('is the border of the map for everything of a region that it cuts off', () => {
    const planes = { grid: SIMPLE.grid, excessEi: new Float32Array(160_000).fill(5), deltaA: null, referenceUEi: null, referenceUDeltaA: null };
    expect(reasonsOf({ ...withOutlines({ erythema: cutOff }), redness: planes }, OF_REDNESS)).toEqual(each(OF_REDNESS, 'outOfView'));
    expect(reasonsOf(withOutlines({ raw: cutOff }), ['rawArea', 'rawBeyondMargin'])).toEqual(each(['rawArea', 'rawBeyondMargin'], 'outOfView'));
  });

  it('is a margin that is a single point, and not one of two', () => {
    const keys = ['reach', 'reachP95', 'proximalReach', 'unrolledReach'] as const;
    expect(reasonsOf(withOutlines({ nailFoldMargin: marginLine(LATERAL.slice(0, 1)) }), keys)).toEqual(each(keys, 'marginNotFound'));
    expect(reasonsOf(withOutlines({ nailFoldMargin: null }), keys)).toEqual(each(keys, 'marginNotFound'));
    const withMargin = reasonsOf(withOutlines({ nailFoldMargin: marginLine(LATERAL) }), keys);
    for (const one of withMargin.slice(0, 3)) expect(one).toHaveProperty('value');
    // Beside this margin the skin is so steep that the unrolled reach is not known to 2 mm.
    expect(withMargin[3]).toEqual({ notMeasured: 'toeShapeUnknown' });
    expect(reasonsOf(withOutlines({ marginLateral: LATERAL.slice(0, 1) }), ['foldBulge'])).toEqual(each(['foldBulge'], 'marginNotFound'));
    expect(reasonsOf(withOutlines({ marginLateral: null }), ['foldBulge'])).toEqual(each(['foldBulge'], 'marginNotFound'));
  });

  it('is a toe without an outline, or with one that is empty', () => {
    for (const toe of [null, { rings: [], confidence: 1, boundaryUMm: 0.3 }]) {
      expect(reasonsOf(withOutlines({ toe }), ['foldBulge', 'foldSeenShare'])).toEqual([{ notMeasured: 'toeNotFound' }, { notMeasured: 'toeShapeUnknown' }]);
    }
    expect(reasonsOf(withOutlines({ toe: null }), ['foldStripArea'])).toEqual(each(['foldStripArea'], 'toeNotFound'));
  });

  it('is the evidence where a whole region leans on the margin: it reaches, but no percentile of it does', () => {
    const leaning = withOutlines({ erythema: region(rectangleRing(50, 22, 0.2, 8)) });
    expect(reasonsOf(leaning, ['reach', 'reachP95'])).toEqual([expect.objectContaining({ value: expect.closeTo(0.2, 6) }), { notMeasured: 'evidenceTooWeak' }]);
  });

  it('is a fold that lies outside the toe’s outline', () => {
    const narrow = withOutlines({ nailFoldMargin: marginLine(LATERAL), toe: region(rectangleRing(33, 12, 16, 38)) });
    expect(reasonsOf(narrow, ['foldStripArea'])).toEqual(each(['foldStripArea'], 'foldHidden'));
  });

  it('is the margin for raw tissue that lies wholly behind its end', () => {
    const behind = withOutlines({ nailFoldMargin: marginLine(LATERAL), raw: region(rectangleRing(48, 36, 4, 3)) });
    expect(reasonsOf(behind, ['rawBeyondMargin'])).toEqual(each(['rawBeyondMargin'], 'marginNotFound'));
  });

  it('is the margin where nothing at all was found but skin', () => {
    const bare = { ...SIMPLE, outlines: { ...NOTHING, toe: SIMPLE.outlines.toe } };
    expect(reasonsOf(bare, ['foldBulge', 'foldSeenShare', 'foldStripArea'])).toEqual(each(['foldBulge', 'foldSeenShare', 'foldStripArea'], 'marginNotFound'));
  });
});

describe('raw tissue that goes on behind the margin’s end', () => {
  it('counts only beside the margin', () => {
    const long = withOutlines({ nailFoldMargin: marginLine(LATERAL), raw: region(rectangleRing(47, 22, 2, 18)) });
    expect(reasonsOf(long, ['rawBeyondMargin'])).toEqual([expect.objectContaining({ value: expect.closeTo(-1, 6) })]);
  });
});
