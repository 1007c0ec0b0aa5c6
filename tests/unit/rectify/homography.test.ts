import { describe, expect, it } from 'vitest';
import { fitHomography, type PlanePair } from '../../../lib/rectify/fit-homography';
import { type Homography, invertHomography, pxPerMmAt, toCard, toImage } from '../../../lib/rectify/homography';
import { solveLinear } from '../../../lib/rectify/solve-linear';
import type { PointMm } from '../../../lib/units';
import { randomSource } from '../../phantom/random/random-source';
import { randomCamera } from './random-camera';
import { imageFromCardOf, LEVEL_CAMERA, project } from './synthetic-camera';

const random = randomSource(11, 'homography');
const maps: Homography[] = Array.from({ length: 40 }, () => imageFromCardOf(randomCamera(random, 40)));
const somewhere = (): PointMm => ({ acrossMm: random.between(0, 85.6), downMm: random.between(0, 54) });

describe('a map between card and picture', () => {
  it('agrees with the pinhole camera it was written from', () => {
    for (let i = 0; i < 20; i++) {
      const camera = randomCamera(random, 40);
      const point = somewhere();
      const [seen, expected] = [toImage(imageFromCardOf(camera), point), project(camera, point)];
      expect(Math.hypot(seen.row - expected.row, seen.column - expected.column)).toBeLessThan(1e-8);
    }
  });

  it('and its inverse bring every point back to where it was', () => {
    for (const h of maps) {
      const point = somewhere();
      const back = toCard(invertHomography(h), toImage(h, point));
      expect(Math.hypot(back.acrossMm - point.acrossMm, back.downMm - point.downMm)).toBeLessThan(1e-9);
    }
  });

  it('is its inverse’s inverse', () => {
    for (const h of maps) invertHomography(invertHomography(h)).forEach((value, i) => expect(value).toBeCloseTo(h[i], 8));
  });

  it('is refused when it squeezes the plane to a line or a point', () => {
    expect(() => invertHomography([1, 2, 3, 2, 4, 6, 0, 0, 1])).toThrow(/singular/);
    expect(() => invertHomography([0, 0, 0, 0, 0, 0, 0, 0, 1])).toThrow(/singular/);
    expect(() => invertHomography([NaN, 0, 0, 0, 1, 0, 0, 0, 1])).toThrow(/singular/);
  });

  it('tells pixels per millimetre as the root of the local area', () => {
    expect(pxPerMmAt(imageFromCardOf({ ...LEVEL_CAMERA, rollDeg: 33 }), LEVEL_CAMERA.lookAt)).toBeCloseTo(10, 9);
    expect(pxPerMmAt([8, 0, 0, 0, 18, 0, 0, 0, 1], { acrossMm: 3, downMm: 4 })).toBeCloseTo(12, 9);
  });
});

describe('the map fitted to pairs of points', () => {
  it('is found again exactly from exact pairs', () => {
    for (const h of maps) {
      const pairs: PlanePair[] = Array.from({ length: 9 }, () => somewhere()).map((card) => ({ card, image: toImage(h, card) }));
      const fitted = fitHomography(pairs);
      expect(fitted).not.toBeNull();
      for (const { card, image } of pairs) {
        const at = toImage(fitted as Homography, card);
        expect(Math.hypot(at.row - image.row, at.column - image.column)).toBeLessThan(1e-6);
      }
    }
  });

  it('is found from the least number of pairs, four', () => {
    const corners = [[0, 0], [80, 0], [80, 50], [0, 50]].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
    const fitted = fitHomography(corners.map((card) => ({ card, image: toImage(maps[0], card) })));
    fitted?.forEach((value, i) => expect(value).toBeCloseTo(maps[0][i], 5));
    expect(fitted).not.toBeNull();
  });

  it('does not exist for three pairs, pairs on one line or one pair many times', () => {
    const onLine = Array.from({ length: 8 }, (_, i) => ({ acrossMm: i * 5, downMm: i * 3 }));
    const pairsOf = (cards: readonly PointMm[]): PlanePair[] => cards.map((card) => ({ card, image: toImage(maps[0], card) }));
    expect(fitHomography(pairsOf([somewhere(), somewhere(), somewhere()]))).toBeNull();
    expect(fitHomography(pairsOf(onLine))).toBeNull();
    expect(fitHomography(pairsOf(new Array<PointMm>(6).fill({ acrossMm: 4, downMm: 4 })))).toBeNull();
  });
});

describe('a small linear system', () => {
  it('is solved where a row has to be exchanged first', () => {
    const solution = solveLinear([[0, 2, 1], [1, 0, 0], [3, 1, 4]], [7, 2, 20]);
    expect(solution).toEqual([2, 2, 3].map((value) => expect.closeTo(value, 9)));
  });

  it('is refused when its rows say the same', () => {
    expect(solveLinear([[1, 2], [2, 4]], [1, 2])).toBeNull();
  });
});
