import type { ShownPhoto } from '../../lib/server/shown-episode';

/** The part of the card that is looked at. */
export interface CardWindow {
  readonly acrossMm: number;
  readonly downMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

const round = (value: number): string => value.toPrecision(12);

/**
 * The transform that lays a picture flat on the card, seen straight from above: every photo then has the same
 * millimetres. `cssMatrix([2, 0, 0, 0, 2, 0, 0, 0, 1], window, 1)` makes a picture of half a millimetre a pixel twice as large.
 */
export function cssMatrix(cardFromView: NonNullable<ShownPhoto['cardFromView']>, { acrossMm, downMm }: CardWindow, pxPerMm: number): string {
  const [a, b, c, d, e, f, g, h, i] = cardFromView;
  const across = [a, b, c].map((one, at) => pxPerMm * (one - acrossMm * [g, h, i][at]));
  const down = [d, e, f].map((one, at) => pxPerMm * (one - downMm * [g, h, i][at]));
  // Columns of a 4 × 4 matrix; what lies on the picture has no height.
  const columns = [across[0], down[0], 0, g, across[1], down[1], 0, h, 0, 0, 1, 0, across[2], down[2], 0, i];
  return `matrix3d(${columns.map(round).join(',')})`;
}
