import { expect, it } from 'vitest';
import { invertHomography, toCard, toImage, type Homography } from '../../../lib/rectify/homography';
import { cardFromView } from '../../../lib/report/card-from-view';

/** A leaning camera: no row of it is simple. */
const CARD_FROM_IMAGE: Homography = [0.02, 0.003, -4, -0.002, 0.021, 5, 1e-5, 3e-5, 1];
const PHOTO = { widthPx: 4000, heightPx: 3000 };
const VIEW = { widthPx: 1600, heightPx: 1200 };

it.each([
  [10, 20],
  [35, 12],
  [40, 50],
])('leads from the shown picture to the same %d, %d mm as from the photo', (acrossMm, downMm) => {
  const map = cardFromView(CARD_FROM_IMAGE, PHOTO, VIEW);
  if (map === null) throw new Error('the two are one picture');
  const { column, row } = toImage(invertHomography(CARD_FROM_IMAGE), { acrossMm, downMm });
  // From the centre of the upper left pixel to its corner, made smaller by 4000 / 1600.
  const shown = toCard(map, { column: (column + 0.5) / 2.5, row: (row + 0.5) / 2.5 });
  expect(shown.acrossMm).toBeCloseTo(acrossMm, 6);
  expect(shown.downMm).toBeCloseTo(downMm, 6);
});

it('takes a photo that is stored lying for the same as its upright view', () => {
  const upright = { widthPx: 1200, heightPx: 1600 };
  expect(cardFromView(CARD_FROM_IMAGE, PHOTO, upright)).toEqual(cardFromView(CARD_FROM_IMAGE, PHOTO, VIEW));
});

it('refuses a view that was cut from the photo', () => {
  expect(cardFromView(CARD_FROM_IMAGE, PHOTO, { widthPx: 1600, heightPx: 1100 })).toBeNull();
});
