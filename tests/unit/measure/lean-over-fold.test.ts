import { describe, expect, it } from 'vitest';
import { leanOverFoldDeg } from '../../../lib/measure/lean-over-fold';
import { measureToe } from '../../../lib/measure/measure-toe';
import { fromToeFrame } from '../../../lib/measure/toe-frame';
import { isMeasured } from '../../../lib/result';
import { rectangleRing } from './shapes';
import { LATERAL, marginLine, region, SIMPLE } from './simple-toe';

const DOWN = { across: 0, down: 1 };
const PLATE = rectangleRing(38, 20, 9.5, 14);
const HEIGHT_MM = 250;
const lensAt = (acrossMm: number) => ({ acrossMm, downMm: 27, heightMm: HEIGHT_MM });
/** Foot point of a lens that sees the margin, at 50 mm, under an angle from the plate's side. */
const footMm = (degrees: number) => 50 - HEIGHT_MM * Math.tan((degrees * Math.PI) / 180);

describe('how far the lens leans over the treated fold', () => {
  it.each([0, 5, 20, 45, -30])('is the angle of sight across the toe: %d°', (degrees) => {
    expect(leanOverFoldDeg(LATERAL, PLATE, lensAt(footMm(degrees)), DOWN)).toBeCloseTo(degrees, 9);
  });

  it('is the same for the other side of the toe, seen from its other side', () => {
    const mirrored = LATERAL.map(({ acrossMm, downMm }) => ({ acrossMm: 85.5 - acrossMm, downMm }));
    expect(leanOverFoldDeg(mirrored, rectangleRing(38, 20, 9.5, 14), lensAt(85.5 - footMm(20)), DOWN)).toBeCloseTo(20, 9);
  });

  it('is told across a toe that lies askew, and not across the card', () => {
    const axis = { across: Math.sin(0.4), down: Math.cos(0.4) };
    const turn = <T extends { acrossMm: number; downMm: number }>(point: T) => ({ ...point, ...fromToeFrame(point, axis) });
    expect(leanOverFoldDeg(LATERAL.map(turn), PLATE.map(turn), turn(lensAt(footMm(20))), axis)).toBeCloseTo(20, 9);
  });

  it('does not change with where the lens stands along the toe', () => {
    expect(leanOverFoldDeg(LATERAL, PLATE, { ...lensAt(footMm(20)), downMm: 200 }, DOWN)).toBeCloseTo(20, 9);
  });

  it('is not known without a plate or a margin', () => {
    expect(leanOverFoldDeg(LATERAL, [], lensAt(40), DOWN)).toBeNull();
    expect(leanOverFoldDeg([], PLATE, lensAt(40), DOWN)).toBeNull();
  });
});

describe('redness under a lens that leans over from the other side', () => {
  const outlines = { ...SIMPLE.outlines, nailFoldMargin: marginLine(LATERAL), nailPlate: region(PLATE) };
  const seenUnder = (degrees: number) => measureToe({ ...SIMPLE, outlines, lens: lensAt(footMm(degrees)), toeAxis: DOWN }).measurements;

  it('has no area and no load beyond 20°, for part of it may be out of sight, and keeps its reach', () => {
    for (const key of ['erythemaArea', 'unrolledArea', 'rednessLoad'] as const) expect(seenUnder(20.1)[key], key).toEqual({ notMeasured: 'foldHidden' });
    expect(isMeasured(seenUnder(20.1).reach)).toBe(true);
  });

  it('has an area up to there, and from the fold’s own side', () => {
    for (const degrees of [19.9, 0, -30]) expect(isMeasured(seenUnder(degrees).erythemaArea), `${degrees}°`).toBe(true);
  });
});
