import { describe, expect, it } from 'vitest';
import { distanceToLineMm } from '../../../lib/measure/distance-to-line';
import { lineLengthMm } from '../../../lib/measure/line-length';
import { lineToJson } from '../../../lib/measure/line-to-json';
import { regionMask } from '../../../lib/measure/region-mask';
import { resampleLine } from '../../../lib/measure/resample-line';
import { ringCentroid } from '../../../lib/measure/ring-centroid';
import { signedAreaMm2 } from '../../../lib/measure/signed-area';
import { simplifyRing } from '../../../lib/measure/simplify-ring';
import { circleRing, rectangleRing, wobblyRing } from './shapes';
import { seededRandom } from '../../seeded-random';

describe('resampling', () => {
  it('keeps both ends of a line and spaces the rest equally round its corners', () => {
    const corner = [
      { acrossMm: 0, downMm: 0 },
      { acrossMm: 1, downMm: 0 },
      { acrossMm: 1, downMm: 2 },
    ];
    expect(resampleLine(corner, 1)).toEqual([
      { acrossMm: 0, downMm: 0 },
      { acrossMm: 1, downMm: 0 },
      { acrossMm: 1, downMm: 1 },
      { acrossMm: 1, downMm: 2 },
    ]);
  });

  it('goes once round a ring without repeating its start', () => {
    const points = resampleLine(rectangleRing(0, 0, 2, 1), 0.5, true);
    expect(points).toHaveLength(12);
    expect(lineLengthMm(points, true)).toBeCloseTo(6, 9);
  });

  it('copes with repeated points, and has nothing to give for a line without length', () => {
    const still = { acrossMm: 3, downMm: 3 };
    expect(resampleLine([still, still, { acrossMm: 4, downMm: 3 }], 0.5)).toHaveLength(3);
    expect(resampleLine([still, still], 0.5)).toEqual([]);
    expect(() => resampleLine([still], 0)).toThrow(/spacingMm must be > 0, received 0/);
  });
});

describe('distances and order', () => {
  const line = [
    { acrossMm: 0, downMm: 0 },
    { acrossMm: 10, downMm: 0 },
  ];

  it('measures to the foot of the perpendicular, or to the nearer end', () => {
    expect(distanceToLineMm({ acrossMm: 4, downMm: -3 }, line)).toBe(3);
    expect(distanceToLineMm({ acrossMm: 13, downMm: 4 }, line)).toBe(5);
    expect(() => distanceToLineMm({ acrossMm: 0, downMm: 0 }, [])).toThrow(/received 0/);
  });

  it('has no centroid where a ring encloses nothing', () => {
    expect(ringCentroid([{ acrossMm: 0, downMm: 0 }, { acrossMm: 1, downMm: 0 }, { acrossMm: 2, downMm: 0 }])).toBeNull();
  });
});

describe('rings for a file', () => {
  it('simplifies without leaving the original by more than the tolerance', () => {
    const random = seededRandom(11);
    for (let run = 0; run < 20; run += 1) {
      const ring = resampleLine(wobblyRing(random, 40), 0.05, true);
      const simple = simplifyRing(ring, 0.02);
      const closed = [...simple, simple[0]];
      expect(simple.length).toBeLessThan(ring.length / 4);
      ring.forEach((point) => expect(distanceToLineMm(point, closed)).toBeLessThanOrEqual(0.02 + 1e-12));
    }
  });

  it('drops only points on straight sides at a tolerance of 0', () => {
    const ring = resampleLine(rectangleRing(0, 0, 2, 1), 0.5, true);
    expect(simplifyRing(ring, 0)).toEqual(rectangleRing(0, 0, 2, 1));
  });

  it('keeps the area of a circle within 0.5 % at 0.01 mm', () => {
    const circle = circleRing(40, 27, 5, 2000);
    const share = signedAreaMm2(simplifyRing(circle, 0.01)) / signedAreaMm2(circle);
    expect(Math.abs(share - 1)).toBeLessThan(0.005);
  });

  it('writes three decimals, one of equal neighbours, and no minus zero', () => {
    const written = lineToJson([
      { acrossMm: 1.23456, downMm: -0.00001 },
      { acrossMm: 1.23459, downMm: 0 },
      { acrossMm: 2, downMm: 1 },
    ]);
    expect(JSON.stringify(written)).toBe('[[1.235,0],[2,1]]');
    expect(Object.is(written[0][1], 0)).toBe(true);
  });
});

describe('masks', () => {
  const grid = { originAcrossMm: 10, originDownMm: 10, pxPerMm: 10, widthPx: 200, heightPx: 200 };
  const areaOf = (mask: Uint8Array): number => mask.reduce((sum, inside) => sum + inside, 0) / 100;

  it('holds the pixels of a region without its holes', () => {
    const rings = [
      { ring: circleRing(20, 20, 5), hole: false },
      { ring: circleRing(20, 20, 2), hole: true },
    ];
    expect(areaOf(regionMask(rings, grid)) / (Math.PI * 21)).toBeCloseTo(1, 2);
  });

  it('grows by the rim on every side: a circle by its radius', () => {
    const grown = regionMask([{ ring: circleRing(20, 20, 4), hole: false }], grid, 1.5);
    expect(areaOf(grown) / (Math.PI * 5.5 ** 2)).toBeCloseTo(1, 2);
  });

  it('stays within the map where a region does not', () => {
    const corner = regionMask([{ ring: circleRing(10, 10, 4), hole: false }], grid, 1);
    expect(areaOf(corner) / ((Math.PI * 25) / 4)).toBeCloseTo(1, 1);
    expect(() => regionMask([], grid, -1)).toThrow(/rimMm must be ≥ 0, received -1/);
  });
});
