import { expect, it } from 'vitest';
import { cssMatrix } from '../../../app/_components/css-matrix';
import { cardWindow } from '../../../app/(staff)/episodes/[caseCode]/card-window';
import { type Homography, toCard } from '../../../lib/rectify/homography';
import type { ShownPhoto } from '../../../lib/server/shown-episode';

const CARD_FROM_VIEW: Homography = [0.05, 0.003, -4, -0.002, 0.051, 5, 1e-5, 3e-5, 1];
const WINDOW = { acrossMm: 20, downMm: 8, widthMm: 40, heightMm: 50 };

/** As CSS Transforms 2 defines matrix3d: sixteen numbers column by column, then division by w. */
function applied(matrix: string, column: number, row: number): { left: number; top: number } {
  const m = matrix.replace(/^matrix3d\(|\)$/g, '').split(',').map(Number);
  const w = m[3] * column + m[7] * row + m[15];
  return { left: (m[0] * column + m[4] * row + m[12]) / w, top: (m[1] * column + m[5] * row + m[13]) / w };
}

it.each([
  [0, 0],
  [800, 600],
  [1599, 1199],
])('lays the pixel %d, %d of a leaning photo on its millimetres, ten pixels each', (column, row) => {
  const { acrossMm, downMm } = toCard(CARD_FROM_VIEW, { column, row });
  const { left, top } = applied(cssMatrix(CARD_FROM_VIEW, WINDOW, 10), column, row);
  expect(left).toBeCloseTo(10 * (acrossMm - WINDOW.acrossMm), 5);
  expect(top).toBeCloseTo(10 * (downMm - WINDOW.downMm), 5);
});

it('looks at every toe of the photos, down to a little below the lowest pen line', () => {
  const photo = (from: [number, number], to: [number, number], dateAt: [number, number] | null) => ({ versions: [{ places: { toe: { from, to }, dateAt } }] }) as unknown as ShownPhoto;
  const seen = cardWindow([photo([30, 10], [50, 80], [35, 30]), photo([28, 12], [49, 80], [36, 34])]);
  expect(seen).toEqual({ acrossMm: 26, downMm: 8, widthMm: 26, heightMm: 37 });
});
