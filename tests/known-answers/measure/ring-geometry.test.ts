/**
 * Area, perimeter and centroid against closed formulas, and against d3-polygon, a geometry library made elsewhere.
 */
import { polygonArea, polygonCentroid, polygonLength } from 'd3-polygon';
import { describe, expect, it } from 'vitest';
import { lineLengthMm } from '../../../lib/measure/line-length';
import { regionAreaMm2 } from '../../../lib/measure/region-area';
import { regionPerimeterMm } from '../../../lib/measure/region-perimeter';
import { ringCentroid } from '../../../lib/measure/ring-centroid';
import { signedAreaMm2 } from '../../../lib/measure/signed-area';
import { ellipseRing, wobblyRing } from '../../unit/measure/shapes';
import { seededRandom } from '../../seeded-random';

const SIDES = 720;

describe('rings against closed formulas', () => {
  it('gives a regular polygon its area ½·n·r²·sin(2π/n) and its perimeter 2·n·r·sin(π/n)', () => {
    const ring = ellipseRing(40, 27, 5, 5, SIDES);
    expect(signedAreaMm2(ring)).toBeCloseTo(0.5 * SIDES * 25 * Math.sin((2 * Math.PI) / SIDES), 9);
    expect(lineLengthMm(ring, true)).toBeCloseTo(2 * SIDES * 5 * Math.sin(Math.PI / SIDES), 9);
  });

  it('comes within 0.002 % of π·a·b for an ellipse of 720 sides', () => {
    const area = signedAreaMm2(ellipseRing(40, 27, 7, 3, SIDES));
    expect(Math.abs(area / (Math.PI * 7 * 3) - 1)).toBeLessThan(2e-5);
  });

  it('comes within 0.01 % of the perimeter of an ellipse by Ramanujan 1914', () => {
    const h = ((7 - 3) / (7 + 3)) ** 2;
    const perimeter = Math.PI * (7 + 3) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    expect(Math.abs(lineLengthMm(ellipseRing(40, 27, 7, 3, SIDES), true) / perimeter - 1)).toBeLessThan(1e-4);
  });

  it('takes the hole out of an annulus, π·(R² − r²), and adds its edge, 2π·(R + r)', () => {
    const rings = [
      { ring: ellipseRing(40, 27, 5, 5, SIDES), hole: false },
      { ring: ellipseRing(40, 27, 3, 3, SIDES), hole: true },
    ];
    expect(Math.abs(regionAreaMm2(rings) / (Math.PI * 16) - 1)).toBeLessThan(2e-5);
    expect(Math.abs(regionPerimeterMm(rings) / (2 * Math.PI * 8) - 1)).toBeLessThan(1e-5);
  });
});

describe('rings against d3-polygon', () => {
  const random = seededRandom(20260302);
  const shapes = Array.from({ length: 40 }, (_, index) => wobblyRing(random, 3 + index * 5));

  it('agrees on area, perimeter and centroid of 40 irregular rings to 1e-9', () => {
    for (const ring of shapes) {
      const pairs = ring.map(({ acrossMm, downMm }): [number, number] => [acrossMm, downMm]);
      // d3 counts anticlockwise in a frame with y downward as positive, we clockwise.
      expect(signedAreaMm2(ring)).toBeCloseTo(-polygonArea(pairs), 9);
      expect(lineLengthMm(ring, true)).toBeCloseTo(polygonLength(pairs), 9);
      const [across, down] = polygonCentroid(pairs);
      expect(ringCentroid(ring)?.acrossMm).toBeCloseTo(across, 9);
      expect(ringCentroid(ring)?.downMm).toBeCloseTo(down, 9);
    }
  });
});
