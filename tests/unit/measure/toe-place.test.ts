import { describe, expect, it } from 'vitest';
import { moveWithToe, toePlace } from '../../../lib/measure/toe-place';
import { rectangleRing } from './shapes';

const plate = [{ ring: rectangleRing(36, 20, 8, 14), hole: false }];
const toe = [{ ring: rectangleRing(30, 10, 20, 40), hole: false }];

describe('where a toe lies', () => {
  it('is the middle of its plate, and straight where its sides run down the card', () => {
    const place = toePlace(plate, toe);
    expect(place?.middle).toEqual({ acrossMm: 40, downMm: 27 });
    expect(place?.turnDeg).toBeCloseTo(0, 9);
  });

  it('is turned by the angle of its centre line, positive with its ankle to the right', () => {
    // A parallelogram that moves to the right by one millimetre in four: 14.04°.
    const leaning = [{ ring: [[30, 10], [50, 10], [60, 50], [40, 50]].map(([acrossMm, downMm]) => ({ acrossMm, downMm })), hole: false }];
    expect(toePlace(plate, leaning)?.turnDeg).toBeCloseTo((Math.atan(0.25) * 180) / Math.PI, 6);
  });

  it('is unknown without plate or toe', () => {
    expect(toePlace([], toe)).toBeNull();
    expect(toePlace(plate, [])).toBeNull();
  });
});

describe('moving with the toe', () => {
  it('turns about the plate’s middle: a quarter turn takes what lay beyond it to its left', () => {
    const from = { middle: { acrossMm: 10, downMm: 20 }, turnDeg: 0 };
    const to = { middle: { acrossMm: 50, downMm: 30 }, turnDeg: -90 };
    const ankle = moveWithToe(from, to, { acrossMm: 10, downMm: 25 });
    expect(ankle.acrossMm).toBeCloseTo(45, 9);
    expect(ankle.downMm).toBeCloseTo(30, 9);
    const side = moveWithToe(from, to, { acrossMm: 13, downMm: 20 });
    expect(side.acrossMm).toBeCloseTo(50, 9);
    expect(side.downMm).toBeCloseTo(33, 9);
  });

  it('takes only the difference of the two turns', () => {
    const place = { middle: { acrossMm: 10, downMm: 20 }, turnDeg: 12 };
    const stays = moveWithToe(place, { ...place, middle: { acrossMm: 11, downMm: 18 } }, { acrossMm: 17, downMm: 26 });
    expect(stays.acrossMm).toBeCloseTo(18, 9);
    expect(stays.downMm).toBeCloseTo(24, 9);
  });
});
