import { describe, expect, it } from 'vitest';
import { measureToe } from '../../../lib/measure/measure-toe';
import type { MeasureInput } from '../../../lib/measure/measure-input';
import { fitToeCylinder } from '../../../lib/measure/toe-cylinder';
import type { ToeCylinder } from '../../../lib/measure/toe-cylinder';
import { CARD_DOWN } from '../../../lib/measure/toe-frame';
import { unrolledAreaMm2 } from '../../../lib/measure/unrolled-area';
import { OVERHEAD, type ToeRelief } from '../../../lib/measure/toe-relief';
import { USUAL_SECTION } from '../../../lib/measure/constants';
import { isMeasured } from '../../../lib/result';
import { SIMPLE, marginLine, region } from './simple-toe';
import { rectangleRing, superellipseArc, turned } from './shapes';

const TOE = [{ ring: rectangleRing(30, 10, 20, 40), hole: false }];

function cylinderOf(rings: typeof TOE, axis = CARD_DOWN): ToeCylinder {
  const cylinder = fitToeCylinder(rings, axis);
  if (cylinder === null) throw new Error('no cylinder was fitted');
  return cylinder;
}

/** A round toe, for which arcs are known. */
const ROUND = { flatness: 1, squareness: 2 };
const over = (cylinder: ToeCylinder): ToeRelief => ({ cylinder, lens: OVERHEAD, shape: ROUND });

const area = (left: number, width: number, relief = over(cylinderOf(TOE))): number =>
  unrolledAreaMm2([{ ring: rectangleRing(left, 20, width, 10), hole: false }], relief);

describe('the toe as a cylinder', () => {
  it('has half the width of a straight toe as radius everywhere, and its middle as centre line', () => {
    const cylinder = cylinderOf(TOE);
    cylinder.halfWidthsMm.forEach((halfWidth) => expect(halfWidth).toBeCloseTo(10, 9));
    expect(cylinder.centreMm).toBeCloseTo(40, 9);
    expect(cylinder.centreSlope).toBeCloseTo(0, 9);
  });

  it('finds the lean of a toe that does not lie along the card', () => {
    const leaning = TOE.map(({ ring, hole }) => ({ ring: turned(ring, -8), hole }));
    const { centreSlope } = cylinderOf(leaning);
    expect((Math.atan(centreSlope) * 180) / Math.PI).toBeCloseTo(8, 0);
  });

  it('grows thicker where the toe does', () => {
    const cone = [
      {
        ring: [
          { acrossMm: 32, downMm: 10 },
          { acrossMm: 48, downMm: 10 },
          { acrossMm: 50, downMm: 50 },
          { acrossMm: 30, downMm: 50 },
        ],
        hole: false,
      },
    ];
    const { halfWidthsMm } = cylinderOf(cone);
    expect(halfWidthsMm[0]).toBeCloseTo(8, 0);
    expect(halfWidthsMm[halfWidthsMm.length - 1]).toBeCloseTo(10, 0);
  });

  it.each([
    ['a toe of 6 mm length', rectangleRing(30, 10, 20, 6)],
    ['a toe of 6 mm width', rectangleRing(30, 10, 6, 40)],
    ['a toe of 60 mm width', rectangleRing(10, 10, 60, 40)],
    ['two points', rectangleRing(10, 10, 60, 40).slice(0, 2)],
  ])('is not fitted to %s', (_, ring) => {
    expect(fitToeCylinder([{ ring, hole: false }], CARD_DOWN)).toBeNull();
  });
});

describe('unrolled area', () => {
  it('of a strip on top is its chord turned into the arc', () => {
    expect(area(35, 10)).toBeCloseTo(10 * 20 * Math.asin(0.5), 1);
  });

  it('of a strip on the side is larger than on top by 1 / cos of the slope there', () => {
    const slope = Math.asin(0.8);
    expect(area(47.95, 0.1) / area(39.95, 0.1)).toBeCloseTo(1 / Math.cos(slope), 2);
  });

  it('is the same whether the toe lies along the card or askew', () => {
    const angle = (20 * Math.PI) / 180;
    const cylinder = cylinderOf(
      TOE.map(({ ring, hole }) => ({ ring: turned(ring, 20), hole })),
      { across: -Math.sin(angle), down: Math.cos(angle) },
    );
    const ring = turned(rectangleRing(44, 20, 4, 10), 20);
    // The ends of a toe turned in the map are cut the same way, so only the numerical noise of slicing is left.
    expect(unrolledAreaMm2([{ ring, hole: false }], over(cylinder))).toBeCloseTo(area(44, 4), 1);
  });

  it('takes holes out', () => {
    const outer = { ring: rectangleRing(42, 20, 6, 10), hole: false };
    const hole = { ring: rectangleRing(44, 23, 2, 3), hole: true };
    const relief = over(cylinderOf(TOE));
    expect(unrolledAreaMm2([outer, hole], relief)).toBeCloseTo(
      unrolledAreaMm2([outer], relief) - unrolledAreaMm2([{ ...hole, hole: false }], relief),
      9,
    );
  });
});

describe('unrolled measurements of a photo', () => {
  const withRegion = (left: number, width: number): MeasureInput => ({
    ...SIMPLE,
    toeAxis: CARD_DOWN,
    outlines: {
      ...SIMPLE.outlines,
      toe: region(TOE[0].ring),
      erythema: region(rectangleRing(left, 20, width, 10)),
      nailFoldMargin: marginLine([
        { acrossMm: 45, downMm: 10 },
        { acrossMm: 45, downMm: 40 },
      ]),
    },
  });

  it('reaches along the arc from margin to edge', () => {
    const { unrolledReach } = measureToe(withRegion(45, 4)).measurements;
    if (!isMeasured(unrolledReach)) throw new Error(unrolledReach.notMeasured);
    expect(unrolledReach.value).toBeCloseTo(10 * (superellipseArc(USUAL_SECTION, 0.9) - superellipseArc(USUAL_SECTION, 0.5)), 2);
  });

  it('doubts the body more on the side of the toe than on its top', () => {
    const doubt = (left: number): number => measureToe(withRegion(left, 3)).budget.unrolledArea?.terms.toeMiddle ?? NaN;
    expect(doubt(46)).toBeGreaterThan(3 * doubt(40));
  });

  it('gives no reach that is not known to 2 mm, for the growth by 2 mm that matters would not be seen in it', () => {
    const onTop = measureToe(withRegion(45, 2)).measurements.unrolledReach;
    expect(isMeasured(onTop) && onTop.U).toBeLessThanOrEqual(2);
    const onSide = measureToe(withRegion(45, 4.9)).measurements;
    expect(onSide.unrolledReach).toEqual({ notMeasured: 'toeShapeUnknown' });
    expect(isMeasured(onSide.reach) && isMeasured(onSide.unrolledArea)).toBe(true);
  });

  it('refuses where no toe outline is there, and says nothing of the projected area with it', () => {
    const input = withRegion(45, 4);
    const { measurements } = measureToe({ ...input, outlines: { ...input.outlines, toe: null } });
    expect(measurements.unrolledArea).toEqual({ notMeasured: 'toeShapeUnknown' });
    expect(measurements.unrolledReach).toEqual({ notMeasured: 'toeShapeUnknown' });
    expect(isMeasured(measurements.erythemaArea)).toBe(true);
  });

  it('refuses where most of the region is seen almost edge-on, and tells the share', () => {
    const { measurements, notes } = measureToe(withRegion(49.5, 1));
    expect(measurements.unrolledArea).toEqual({ notMeasured: 'toeShapeUnknown' });
    expect(notes.cappedShare).toBeGreaterThan(0.5);
  });

  it('reports no capped share for a region on top', () => {
    expect(measureToe(withRegion(38, 3)).notes.cappedShare).toBeCloseTo(0, 9);
  });
});
