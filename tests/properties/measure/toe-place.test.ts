import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leanPoint } from '../../../lib/measure/lean-point';
import { moveWithToe, type ToePlace, toePlace } from '../../../lib/measure/toe-place';
import { straightenPoint, type ToeRelief } from '../../../lib/measure/toe-relief';
import type { PointMm } from '../../../lib/units';
import { rectangleRing } from '../../unit/measure/shapes';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point = (across: readonly [number, number], down: readonly [number, number]) => fc.record({ acrossMm: between(...across), downMm: between(...down) });
const place = fc.record({ middle: point([30, 55], [15, 35]), turnDeg: between(-15, 15) });
const apart = (a: PointMm, b: PointMm) => Math.hypot(a.acrossMm - b.acrossMm, a.downMm - b.downMm);

describe('moving with the toe', () => {
  it('leads back, keeps every length, and brings the nail onto the nail', () => {
    fc.assert(
      fc.property(place, place, point([20, 65], [5, 55]), point([20, 65], [5, 55]), (from, to, a, b) => {
        const [movedA, movedB] = [a, b].map((one) => moveWithToe(from, to, one));
        expect(apart(moveWithToe(to, from, movedA), a)).toBeLessThan(1e-9);
        expect(apart(movedA, movedB)).toBeCloseTo(apart(a, b), 9);
        expect(apart(moveWithToe(from, to, from.middle), to.middle)).toBeLessThan(1e-9);
      }),
    );
  });

  it('finds the place of a toe that was turned and shifted', () => {
    const straight: ToePlace = { middle: { acrossMm: 0, downMm: 0 }, turnDeg: 0 };
    const [plate, toe] = [rectangleRing(-5, -7, 10, 14), rectangleRing(-10, -12, 20, 40)];
    fc.assert(
      fc.property(place, (to) => {
        const lay = (ring: readonly PointMm[]) => [{ ring: ring.map((one) => moveWithToe(straight, to, one)), hole: false }];
        const found = toePlace(lay(plate), lay(toe));
        expect(apart(found!.middle, to.middle)).toBeLessThan(1e-6);
        // The outline is read in slices of half a millimetre, and its ends are cut askew.
        expect(Math.abs(found!.turnDeg - to.turnDeg)).toBeLessThan(2);
      }),
    );
  });

  it('has no place without a plate or without a toe', () => {
    const some = [{ ring: rectangleRing(30, 10, 20, 40), hole: false }];
    expect([toePlace([], some), toePlace(some, [])]).toEqual([null, null]);
  });
});

/** A toe 20 mm wide, and a lens anywhere a photo is taken from with up to 35° of lean. */
const reliefs = point([-130, 210], [-130, 190]).map(
  (foot): ToeRelief => ({ cylinder: { axis: { across: 0, down: 1 }, startMm: 10, halfWidthsMm: Array.from({ length: 60 }, () => 10), centreMm: 42, centreSlope: 0 }, lens: { ...foot, heightMm: 250 } }),
);

it('leaning leads back to where straightening came from, on the upper side of the toe, whatever the lean', () => {
  fc.assert(
    fc.property(reliefs, point([34, 50], [14, 38]), (relief, flat) => {
      expect(apart(straightenPoint(relief, leanPoint(relief, flat)), flat)).toBeLessThan(0.05);
    }),
  );
});
