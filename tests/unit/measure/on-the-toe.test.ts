import { describe, expect, it } from 'vitest';
import { arcLengthMm } from '../../../lib/measure/arc-length';
import { besideLine } from '../../../lib/measure/beside-line';
import { foldSeenShare } from '../../../lib/measure/fold-seen-share';
import { foldSide } from '../../../lib/measure/fold-side';
import { measureToe } from '../../../lib/measure/measure-toe';
import { onCylinder } from '../../../lib/measure/on-cylinder';
import { fitToeCylinder } from '../../../lib/measure/toe-cylinder';
import { CARD_DOWN, fromToeFrame, toToeFrame } from '../../../lib/measure/toe-frame';
import { LATERAL, SIMPLE, marginLine, region } from './simple-toe';
import { circleRing, rectangleRing, turned } from './shapes';

describe('an arc', () => {
  it('is the chord’s: a sixth of the half turn over half the radius, on either side', () => {
    expect(arcLengthMm(5, 10)).toBeCloseTo((10 * Math.PI) / 6, 12);
    expect(arcLengthMm(-5, 10)).toBeCloseTo((-10 * Math.PI) / 6, 12);
  });

  it('goes on straight where the skin is seen almost edge-on, 4.113 times as long as it looks', () => {
    expect(arcLengthMm(10, 10) - arcLengthMm(9.7, 10)).toBeCloseTo(0.3 / Math.sqrt(1 - 0.97 ** 2), 9);
    expect(arcLengthMm(12, 10) - arcLengthMm(11, 10)).toBeCloseTo(4.113, 3);
  });

  it('has a radius', () => {
    for (const radiusMm of [0, -1, NaN]) expect(() => arcLengthMm(1, radiusMm)).toThrow(`arcLengthMm: radiusMm must be > 0, received ${radiusMm}`);
  });
});

describe('a place on the toe', () => {
  const cylinder = { axis: CARD_DOWN, startMm: 5, halfWidthsMm: [8, 10, 13], centreMm: 40, centreSlope: 0.2 };
  const radius = (downMm: number) => onCylinder({ acrossMm: 40, downMm }, cylinder).radiusMm;

  it('has the radius between its two slices, and outside the outline that of the nearest', () => {
    expect([5, 5.25, 5.5, 5.6, 6].map(radius)).toEqual([8, 9, 10, expect.closeTo(10.6, 9), 13]);
    expect([radius(-3), radius(30)]).toEqual([8, 13]);
  });

  it('counts across from a centre line that runs aslant', () => {
    expect(onCylinder({ acrossMm: 47, downMm: 15 }, cylinder)).toMatchObject({ offsetMm: expect.closeTo(5, 9), alongMm: 15 });
    expect(onCylinder({ acrossMm: 40, downMm: 5 }, cylinder).offsetMm).toBeCloseTo(0, 9);
  });

  it('comes back from the toe’s own frame', () => {
    const axis = { across: -0.6, down: 0.8 };
    const back = fromToeFrame(toToeFrame({ acrossMm: 3, downMm: 7 }, axis), axis);
    expect(back.acrossMm).toBeCloseTo(3, 12);
    expect(back.downMm).toBeCloseTo(7, 12);
  });
});

describe('the outline of a toe', () => {
  const toeOf = (...sides: Parameters<typeof rectangleRing>) => fitToeCylinder([{ ring: rectangleRing(...sides), hole: false }], CARD_DOWN);

  it('is read from half a slice behind its tip', () => {
    expect(toeOf(30, 10, 20, 40)?.startMm).toBe(10.25);
    expect(toeOf(30, 10, 20, 40)?.halfWidthsMm).toHaveLength(79);
  });

  it('is a big toe’s from ten to forty-four millimetres of width, and from eight of length behind its tip', () => {
    expect([toeOf(30, 10, 10, 40), toeOf(20, 10, 44, 40), toeOf(30, 10, 20, 8.25)]).not.toContain(null);
    expect([toeOf(30, 10, 9.9, 40), toeOf(20, 10, 44.1, 40), toeOf(30, 10, 20, 8.2)]).toEqual([null, null, null]);
  });

  it('is smoothed over three millimetres: a nick of one is none, a waist of four is one', () => {
    const nicked = (lengthMm: number) => {
      const [left, right] = [[30, 33], [50, 47]];
      const side = ([outer, inner]: number[]) => [[outer, 10], [outer, 25], [inner, 25], [inner, 25 + lengthMm], [outer, 25 + lengthMm], [outer, 50]];
      const ring = [...side(right), ...side(left).reverse()].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
      return Math.min(...fitToeCylinder([{ ring, hole: false }], CARD_DOWN)!.halfWidthsMm);
    };
    expect(nicked(1)).toBeCloseTo(10, 9);
    expect(nicked(4)).toBeCloseTo(7, 9);
  });
});

describe('a toe that lies askew', () => {
  it('is measured along its own axis, which is a millimetre long for every millimetre', () => {
    // A parallelogram that moves to the right by one millimetre in four, and redness twelve millimetres along it from the margin's end.
    const ring = [[30, 10], [50, 10], [60, 50], [40, 50]].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
    const along = 10 / Math.hypot(1, 4);
    const margin = marginLine([{ acrossMm: 44, downMm: 20 }, { acrossMm: 45, downMm: 24 }]);
    const input = { ...SIMPLE, outlines: { ...SIMPLE.outlines, toe: region(ring), nailFoldMargin: margin, erythema: region(circleRing(45 + along, 24 + 4 * along, 2)) } };
    const { measurements, notes } = measureToe(input);
    expect(notes.toeAxisFrom).toBe('toeOutline');
    expect(measurements.proximalReach).toMatchObject({ value: expect.closeTo(12, 2) });
  });
});

describe('beside a margin that runs aslant', () => {
  it('left and right are told from its direction there, and a single point has neither', () => {
    const aslant = [0, 1, 2, 3, 4].map((i) => ({ acrossMm: 10 + 3 * i, downMm: 20 + 4 * i }));
    // Five millimetres off the middle point, square to the line.
    expect(besideLine({ acrossMm: 16 + 4, downMm: 28 - 3 }, aslant)).toEqual({ mm: expect.closeTo(5, 9), atEnd: false });
    expect(besideLine({ acrossMm: 16 - 4, downMm: 28 + 3 }, aslant)).toEqual({ mm: expect.closeTo(-5, 9), atEnd: false });
    expect(besideLine({ acrossMm: 1, downMm: 2 }, [{ acrossMm: 0, downMm: 0 }, { acrossMm: 0, downMm: 4 }]).mm).toBeGreaterThan(0);
    expect(() => besideLine({ acrossMm: 0, downMm: 0 }, aslant.slice(0, 1))).toThrow('besideLine: line needs at least two points, received 1');
  });

  it('as much of the fold is seen as beside the same margin upright', () => {
    const seen = (turnDeg: number) => {
      const [down] = turned([{ acrossMm: 0, downMm: 1 }], turnDeg);
      const axis = { across: down.acrossMm, down: down.downMm };
      const fold = foldSide({ nailFoldMargin: marginLine(turned(LATERAL, turnDeg)), nailPlate: region(turned(SIMPLE.outlines.nailPlate!.rings[0].ring, turnDeg)) });
      const [foot] = turned([{ acrossMm: -150, downMm: 27 }], turnDeg);
      const cylinder = { axis, startMm: 12, halfWidthsMm: Array.from({ length: 76 }, () => 11.5), centreMm: 40, centreSlope: 0 };
      return foldSeenShare(fold!, { cylinder, lens: { ...foot, heightMm: 250 } });
    };
    expect(seen(0)).toBeGreaterThan(0.1);
    expect(seen(0)).toBeLessThan(0.9);
    for (const turnDeg of [30, 75, -50]) expect(Math.abs(seen(turnDeg)! - seen(0)!)).toBeLessThan(0.02);
  });
});
