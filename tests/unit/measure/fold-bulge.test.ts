import { describe, expect, it } from 'vitest';
import { foldSide } from '../../../lib/measure/fold-side';
import { measureFoldBulge } from '../../../lib/measure/measure-fold-bulge';
import { measureToe } from '../../../lib/measure/measure-toe';
import { CARD_DOWN } from '../../../lib/measure/toe-frame';
import type { RingMm } from '../../../lib/units';
import { LATERAL, SIMPLE, marginLine, region } from './simple-toe';
import { rectangleRing } from './shapes';

const ring = (...points: readonly (readonly [number, number])[]): RingMm => points.map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
/** A toe from 33 to 55 that stands out by two millimetres beside the margin, from one place down the page to another. */
const standingOut = (fromMm: number, toMm: number): RingMm => ring([33, 12], [55, 12], [55, fromMm], [57, fromMm], [57, toMm], [55, toMm], [55, 50], [33, 50]);
const mirrored = (line: RingMm): RingMm => line.map(({ acrossMm, downMm }) => ({ acrossMm: 88 - acrossMm, downMm }));
const bulge = (toe: RingMm, lateral = LATERAL) =>
  measureFoldBulge({ ...SIMPLE, outlines: { ...SIMPLE.outlines, toe: region(toe), nailFoldMargin: marginLine(lateral), marginLateral: lateral } }, CARD_DOWN);
const bulgeMm = (toe: RingMm, lateral = LATERAL) => (bulge(toe, lateral).measurement as { value: number }).value;

describe('the bulge of the treated fold', () => {
  it('stands out on the treated side, be it left or right', () => {
    expect(bulgeMm(standingOut(20, 34))).toBeCloseTo(2, 6);
    expect(bulgeMm(mirrored(standingOut(20, 34)), mirrored(LATERAL))).toBeCloseTo(2, 6);
    expect(bulgeMm(standingOut(20, 34), mirrored(LATERAL))).toBeCloseTo(-2, 6);
  });

  it('is its greatest place, over three millimetres: a nick of one and a half is none', () => {
    expect(bulgeMm(standingOut(25, 28.5))).toBeCloseTo(2, 6);
    expect(bulgeMm(standingOut(25, 26.5))).toBeCloseTo(0, 6);
  });

  it('is looked for beside the margin only', () => {
    expect(bulgeMm(standingOut(12, 18))).toBeCloseTo(0, 6);
    expect(bulgeMm(standingOut(20, 24), LATERAL.map((point) => ({ ...point, downMm: point.downMm + 6 })))).toBeCloseTo(0, 6);
  });

  it('takes its middle from 3 to 16 mm behind the nail, whatever the toe does beyond', () => {
    expect(bulgeMm(ring([33, 12], [55, 12], [55, 50], [60, 50], [60, 66], [33, 66]))).toBeCloseTo(0, 6);
    expect(bulgeMm(ring([33, 12], [55, 12], [55, 34], [56, 34], [56, 37], [55, 37], [55, 50], [33, 50]))).toBeCloseTo(0, 6);
  });

  it('is unknown with less than four millimetres of toe behind the nail', () => {
    // Slices half a millimetre apart, the first 0.25 mm from the tip: 37.25 to 40.75 are eight of them.
    expect(bulge(rectangleRing(33, 12, 22, 29.3)).measurement).toMatchObject({ value: expect.closeTo(0, 6) });
    expect(bulge(rectangleRing(33, 12, 22, 28.7)).measurement).toEqual({ notMeasured: 'toeShapeUnknown' });
  });

  it('is doubted by both sides of the outline and twice by the middle between them', () => {
    expect(bulge(standingOut(20, 34)).budget?.terms).toMatchObject({ printScale: expect.closeTo(0.01, 6), toeOutline: expect.closeTo(0.3 * Math.SQRT2, 9), centreLine: expect.closeTo(1.4, 9) });
    expect(Object.keys(bulge(standingOut(20, 34)).budget?.terms ?? {})).toHaveLength(6);
  });
});

describe('how much of the fold is seen', () => {
  it('is all of it from straight above, in per cent, to ten of them', () => {
    const outlines = { ...SIMPLE.outlines, nailFoldMargin: marginLine(LATERAL) };
    const { measurements, budget } = measureToe({ ...SIMPLE, outlines, lens: { acrossMm: 44, downMm: 27, heightMm: 250 } });
    expect(measurements.foldSeenShare).toMatchObject({ value: 100, u: 10, unit: '%' });
    expect(budget.foldSeenShare?.terms).toEqual({ toeBody: 10 });
  });
});

describe('the fold’s side', () => {
  const outOf = (lateral: RingMm, plateLeftMm: number) => foldSide({ nailFoldMargin: marginLine(lateral), nailPlate: region(rectangleRing(plateLeftMm, 20, 8, 14)) });

  it('is where the plate is not, whichever way the margin runs', () => {
    for (const lateral of [LATERAL, [...LATERAL].reverse()]) {
      expect(outOf(lateral, 40)?.outMm({ acrossMm: 53, downMm: 27 })).toBeCloseTo(3, 9);
      expect(outOf(lateral, 40)?.outMm({ acrossMm: 47, downMm: 27 })).toBeCloseTo(-3, 9);
      expect(outOf(lateral, 52)?.outMm({ acrossMm: 47, downMm: 27 })).toBeCloseTo(3, 9);
    }
  });

  it('is told by the shortest of margins and by no point alone', () => {
    expect(outOf(ring([50, 20], [50, 20.25]), 40)).not.toBeNull();
    expect(outOf(ring([50, 20]), 40)).toBeNull();
  });
});
