import { describe, expect, it } from 'vitest';
import { polygonContains, polygonHull, polygonArea } from 'd3-polygon';
import { OWN_CARD } from '../../../lib/card/own-card';
import { convexHullAreaMm2 } from '../../../lib/rectify/convex-hull';
import { isInsideOutline } from '../../../lib/rectify/inside-outline';
import type { PointMm } from '../../../lib/units';
import { randomSource } from '../../phantom/random/random-source';

const at = (acrossMm: number, downMm: number): PointMm => ({ acrossMm, downMm });
const square = [at(0, 0), at(2, 0), at(2, 2), at(0, 2)];
const random = randomSource(41, 'outlines');
const cloud = (count: number): PointMm[] => Array.from({ length: count }, () => at(random.between(-20, 60), random.between(0, 50)));
const pairs = (points: readonly PointMm[]): [number, number][] => points.map((p) => [p.acrossMm, p.downMm]);

describe('the area of a convex hull', () => {
  it('is that of a square, points inside, on its edge and twice told making no difference', () => {
    expect(convexHullAreaMm2(square)).toBeCloseTo(4, 12);
    expect(convexHullAreaMm2([...square, at(1, 1), at(1, 0), at(2, 2), at(0.3, 1.9)])).toBeCloseTo(4, 12);
  });

  it('is 0 for fewer than three points and for points on one line', () => {
    expect(convexHullAreaMm2([])).toBe(0);
    expect(convexHullAreaMm2([at(1, 2)])).toBe(0);
    expect(convexHullAreaMm2([at(1, 2), at(3, 4)])).toBe(0);
    expect(convexHullAreaMm2([at(0, 0), at(1, 1), at(5, 5), at(3, 3)])).toBeCloseTo(0, 12);
  });

  it('is what d3-polygon says, for random clouds in any order', () => {
    for (let i = 0; i < 50; i++) {
      const points = cloud(3 + (i % 20));
      const expected = Math.abs(polygonArea(polygonHull(pairs(points)) ?? []));
      expect(convexHullAreaMm2(points)).toBeCloseTo(expected, 8);
      expect(convexHullAreaMm2([...points].reverse())).toBeCloseTo(expected, 8);
    }
  });
});

describe('inside an outline', () => {
  it('is the middle of a square and not its surroundings', () => {
    expect(isInsideOutline(at(1, 1), square)).toBe(true);
    for (const outside of [at(-1, 1), at(3, 1), at(1, -1), at(1, 3)]) expect(isInsideOutline(outside, square)).toBe(false);
  });

  it('is what d3-polygon says, for random outlines that may cross themselves', () => {
    for (let i = 0; i < 200; i++) {
      const outline = cloud(5);
      const point = at(random.between(-20, 60), random.between(0, 50));
      expect(isInsideOutline(point, outline)).toBe(polygonContains(pairs(outline), [point.acrossMm, point.downMm]));
    }
  });

  it('is where the toe lies and not where the card’s squares are', () => {
    expect(isInsideOutline(at(42.8, 30), OWN_CARD.notch)).toBe(true);
    for (const fiducial of OWN_CARD.fiducials) expect(isInsideOutline(fiducial.centre, OWN_CARD.notch)).toBe(false);
  });
});
