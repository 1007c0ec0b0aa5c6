import { describe, expect, it } from 'vitest';
import { besideLine } from '../../../lib/measure/beside-line';
import { foldSeenShare } from '../../../lib/measure/fold-seen-share';
import { foldSide } from '../../../lib/measure/fold-side';
import { measureToe } from '../../../lib/measure/measure-toe';
import { sectionArc, sectionHeight, sectionHorizon, sectionShareSeen, sectionSlope, sectionWidening } from '../../../lib/measure/toe-section';
import { OVERHEAD, sectionAt } from '../../../lib/measure/toe-relief';
import { unrollLine } from '../../../lib/measure/unroll-line';
import { fitToeCylinder } from '../../../lib/measure/toe-cylinder';
import { CARD_DOWN, fromToeFrame, toToeFrame } from '../../../lib/measure/toe-frame';
import { LATERAL, SIMPLE, marginLine, region } from './simple-toe';
import { circleRing, rectangleRing, turned } from './shapes';

describe('an arc', () => {
  const ROUND = { flatness: 1, squareness: 2 };
  const cylinder = { axis: CARD_DOWN, startMm: 0, halfWidthsMm: [10], centreMm: 0, centreSlope: 0 };
  const arcMm = (acrossMm: number) => unrollLine([{ acrossMm, downMm: 0 }], { cylinder, lens: OVERHEAD, shape: ROUND })[0].acrossMm;

  it('is the chord’s: a sixth of the half turn over half the radius, on either side', () => {
    expect(arcMm(5)).toBeCloseTo((10 * Math.PI) / 6, 3);
    expect(arcMm(-5)).toBeCloseTo((-10 * Math.PI) / 6, 3);
  });

  it('goes on straight where the skin is seen almost edge-on, 4.113 times as long as it looks', () => {
    expect((arcMm(12) - arcMm(11)) / 4.113).toBeCloseTo(1, 1);
    expect(arcMm(12) - arcMm(11)).toBeCloseTo(arcMm(11) - arcMm(10), 9);
  });
});

describe('a section', () => {
  const SQUARISH = { flatness: 0.85, squareness: 2.4 };

  it('is an ellipse where its exponent is 2, known in closed form', () => {
    const ellipse = { flatness: 0.8, squareness: 2 };
    expect(sectionHeight(ellipse, 0.6)).toBeCloseTo(0.64, 12);
    expect(sectionSlope(ellipse, -0.6)).toBeCloseTo(0.6, 12);
    expect(sectionWidening(ellipse, 1)).toBeCloseTo(Math.hypot(1, 0.8), 12);
    expect(sectionHorizon(ellipse, -1)).toBeCloseTo(1 / Math.hypot(1, 0.8), 12);
    // Quarter of an ellipse's perimeter: Ramanujan's second formula, good to a millionth here.
    const h = (0.2 / 1.8) ** 2;
    expect(sectionArc(ellipse, 1)).toBeCloseTo((Math.PI * 1.8 * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)))) / 4, 4);
  });

  it.each([0, 0.3, 0.8, -0.5])('looks as wide under a lean of %d as its farthest place, and is out of sight from there on', (lean) => {
    const shares = Array.from({ length: 4001 }, (_, i) => i / 2000 - 1);
    const shows = shares.map((share) => share + lean * sectionHeight(SQUARISH, share));
    const far = lean < 0 ? Math.min(...shows) : Math.max(...shows);
    expect(sectionWidening(SQUARISH, lean)).toBeCloseTo(Math.abs(far), 4);
    expect(shares[shows.indexOf(far)] * (lean < 0 ? -1 : 1)).toBeCloseTo(sectionHorizon(SQUARISH, lean), 2);
  });

  it.each([0, 0.4, -0.4])('is found again behind what a lean of %d shows, as far as the horizon', (lean) => {
    const horizon = sectionHorizon(SQUARISH, lean);
    for (const share of [-0.9, -0.5, 0, 0.3, 0.85].filter((one) => one * Math.sign(lean) < horizon)) {
      expect(sectionShareSeen(SQUARISH, lean, share + lean * sectionHeight(SQUARISH, share))).toBeCloseTo(share, 5);
    }
    expect(sectionShareSeen(SQUARISH, lean, lean < 0 ? -3 : 3)).toBeCloseTo(lean < 0 ? -horizon : horizon, 6);
    expect(sectionShareSeen(SQUARISH, lean, lean < 0 ? 3 : -3)).toBeCloseTo(lean < 0 ? 1 : -1, 6);
  });
});

describe('a place on the toe', () => {
  const cylinder = { axis: CARD_DOWN, startMm: 5, halfWidthsMm: [8, 10, 13], centreMm: 40, centreSlope: 0.2 };
  const at = (alongMm: number) => sectionAt({ cylinder, lens: OVERHEAD }, alongMm, 0);

  it('has the half width of its slice, and outside the outline that of the nearest', () => {
    expect([5, 5.5, 6].map((along) => at(along).halfWidthMm)).toEqual([8, 10, 13]);
    expect([at(-3).halfWidthMm, at(30).halfWidthMm]).toEqual([8, 13]);
  });

  it('counts across from a centre line that runs aslant', () => {
    expect(at(15).centreMm).toBeCloseTo(42, 9);
    expect(at(5).centreMm).toBeCloseTo(40, 9);
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
