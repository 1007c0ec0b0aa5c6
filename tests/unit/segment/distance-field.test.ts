import { expect, it } from 'vitest';
import { distanceField } from '../../../lib/segment/distance-field';

const grid = { originAcrossMm: 0, originDownMm: 0, pxPerMm: 2, widthPx: 23, heightPx: 17 };

it('agrees with looking at every marked pixel, for scattered, single and full marks', () => {
  for (const density of [0.004, 0.05, 0.4, 1]) {
    const marked = new Uint8Array(grid.widthPx * grid.heightPx).map((_, i) => (((i * 7919) % 1000) / 1000 < density ? 1 : 0));
    const found = distanceField(grid, marked);
    found.forEach((mm, i) => {
      let nearest = Infinity;
      marked.forEach((one, j) => {
        if (one) nearest = Math.min(nearest, Math.hypot((i % 23) - (j % 23), Math.floor(i / 23) - Math.floor(j / 23)) / grid.pxPerMm);
      });
      expect(mm).toBeCloseTo(nearest, 5);
    });
  }
});

it('is infinite everywhere when nothing is marked', () => {
  expect(new Set(distanceField(grid, new Uint8Array(grid.widthPx * grid.heightPx)))).toEqual(new Set([Infinity]));
});
