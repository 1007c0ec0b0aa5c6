import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carryMargin } from '../../../lib/measure/carry-margin';
import { movePoint, registerToes } from '../../../lib/measure/register-toes';
import type { LineMm, PointMm, RingMm } from '../../../lib/units';

/** A nail plate: straight sides, rounded behind, its treated side cut. */
const PLATE: RingMm = [
  [36, 24], [43.5, 24], [43.2, 33], [42.6, 36.5], [41, 37.8], [38.5, 37.6], [36.4, 36], [35.7, 32],
].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
const MARGIN: LineMm = [
  [46, 25], [46, 35], [45, 37.6], [42, 38.6],
].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));

const turned = (points: LineMm, turnDeg: number, shift: PointMm): LineMm =>
  points.map((point) => movePoint({ about: { acrossMm: 40, downMm: 30 }, to: { acrossMm: 40 + shift.acrossMm, downMm: 30 + shift.downMm }, turnRad: (turnDeg * Math.PI) / 180 }, point));
const distanceMm = (a: PointMm, b: PointMm) => Math.hypot(a.acrossMm - b.acrossMm, a.downMm - b.downMm);
const aside = (line: LineMm, byMm: number): LineMm => line.map(({ acrossMm, downMm }) => ({ acrossMm: acrossMm + byMm, downMm }));

describe('a point moved with its toe', () => {
  it('turns about the toe’s middle, across toward down, and goes where that went', () => {
    const move = { about: { acrossMm: 40, downMm: 30 }, to: { acrossMm: 42, downMm: 31 }, turnRad: Math.PI / 6 };
    const [aside, behind] = [movePoint(move, { acrossMm: 45, downMm: 30 }), movePoint(move, { acrossMm: 40, downMm: 34 })];
    expect([aside.acrossMm, aside.downMm]).toEqual([expect.closeTo(42 + 5 * Math.sqrt(0.75), 9), expect.closeTo(33.5, 9)]);
    expect([behind.acrossMm, behind.downMm]).toEqual([expect.closeTo(40, 9), expect.closeTo(31 + 4 * Math.sqrt(0.75), 9)]);
  });
});

describe('one plate laid upon itself in another photo', () => {
  it('finds any turn up to 15° and any shift of 6 mm, to a twentieth of a millimetre', () => {
    const case_ = fc.record({ turnDeg: fc.double({ min: -15, max: 15, noNaN: true }), acrossMm: fc.double({ min: -6, max: 6, noNaN: true }), downMm: fc.double({ min: -6, max: 6, noNaN: true }) });
    fc.assert(
      fc.property(case_, ({ turnDeg, ...shift }) => {
        const move = registerToes(PLATE, turned(PLATE, turnDeg, shift));
        const expected = turned(MARGIN, turnDeg, shift);
        MARGIN.forEach((point, i) => expect(distanceMm(movePoint(move as NonNullable<typeof move>, point), expected[i])).toBeLessThan(0.05));
      }),
      { numRuns: 40 },
    );
  });

  it('is not led astray by a free edge that was cut shorter meanwhile', () => {
    const cut = PLATE.map(({ acrossMm, downMm }) => ({ acrossMm, downMm: Math.max(25.5, downMm) }));
    const move = registerToes(PLATE, cut);
    for (const point of MARGIN) expect(distanceMm(movePoint(move as NonNullable<typeof move>, point), point)).toBeLessThan(0.3);
  });

  it('has no answer without a plate', () => {
    expect(registerToes([], PLATE)).toBeNull();
    expect(registerToes(PLATE, [])).toBeNull();
  });
});

describe('margins of several visits brought together', () => {
  const own = { line: MARGIN, uMm: 0.4 };
  const middleOf = (line: LineMm) => {
    const middle = line.filter(({ downMm }) => downMm > 27 && downMm < 34).map(({ acrossMm }) => acrossMm);
    expect(middle.length).toBeGreaterThan(25);
    return middle;
  };

  it('leave the own one where nothing was carried', () => {
    expect(carryMargin(own, [])).toBe(own);
  });

  it('meet half way where both are known as well as each other, and nearer the one that is known better', () => {
    for (const at of middleOf(carryMargin(own, [{ line: aside(MARGIN, 0.6), uMm: 0.4 }]).line)) expect(at).toBeCloseTo(46.3, 1);
    for (const at of middleOf(carryMargin(own, [{ line: aside(MARGIN, 0.6), uMm: 0.2 }]).line)) expect(at).toBeCloseTo(46.48, 1);
  });

  it('are not moved by one of several that lies far off', () => {
    const others = [0.1, -0.1, 1.2].map((byMm) => ({ line: aside(MARGIN, byMm), uMm: 0.4 }));
    for (const at of middleOf(carryMargin(own, others).line)) expect(Math.abs(at - 46)).toBeLessThan(0.12);
  });

  it('do not listen to a line that is another line', () => {
    for (const at of middleOf(carryMargin(own, [{ line: aside(MARGIN, -8), uMm: 0.1 }]).line)) expect(at).toBeCloseTo(46, 2);
  });

  it('promise more than any of them alone, and never more than errors they share allow', () => {
    const many = Array.from({ length: 20 }, () => ({ line: MARGIN, uMm: 0.4 }));
    expect(carryMargin(own, many).uMm).toBeCloseTo(0.4 / Math.SQRT2, 9);
    expect(carryMargin(own, many.slice(0, 1)).uMm).toBeLessThan(0.4);
  });
});
