import type { PointMm, PointPx } from '../units';

/**
 * A plane-to-plane projective map as nine numbers, row by row, the last one 1: (x, y) → (m0·x + m1·y + m2) / w and so
 * on. In pictures x is the column and y the row; on the card x is across and y is down.
 */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/**
 * Card millimetres → picture pixels.
 *
 * @param imageFromCard the card's plane in the picture
 * @param point on the card, mm
 * @example toImage([10, 0, 5, 0, 10, 7, 0, 0, 1], { acrossMm: 2, downMm: 3 }) // { column: 25, row: 37 }
 */
export function toImage(imageFromCard: Homography, point: PointMm): PointPx {
  const m = imageFromCard;
  const w = m[6] * point.acrossMm + m[7] * point.downMm + m[8];
  return {
    column: (m[0] * point.acrossMm + m[1] * point.downMm + m[2]) / w,
    row: (m[3] * point.acrossMm + m[4] * point.downMm + m[5]) / w,
  };
}

/**
 * Picture pixels → card millimetres.
 *
 * @param cardFromImage the inverse of the card's plane in the picture
 * @param point in the picture, pixels
 * @example toCard(invertHomography([10, 0, 5, 0, 10, 7, 0, 0, 1]), { row: 37, column: 25 }) // { acrossMm: 2, downMm: 3 }
 */
export function toCard(cardFromImage: Homography, point: PointPx): PointMm {
  const m = cardFromImage;
  const w = m[6] * point.column + m[7] * point.row + m[8];
  return {
    acrossMm: (m[0] * point.column + m[1] * point.row + m[2]) / w,
    downMm: (m[3] * point.column + m[4] * point.row + m[5]) / w,
  };
}

/**
 * The inverse map, scaled so that its last number is 1.
 *
 * @throws RangeError when the map is singular
 * @example invertHomography([2, 0, 4, 0, 2, 6, 0, 0, 1]) // [0.5, 0, -2, 0, 0.5, -3, 0, 0, 1]
 */
export function invertHomography(h: Homography): Homography {
  const [a, b, c, d, e, f, g, i, j] = h;
  const inverse = [
    e * j - f * i, c * i - b * j, b * f - c * e,
    f * g - d * j, a * j - c * g, c * d - a * f,
    d * i - e * g, b * g - a * i, a * e - b * d,
  ];
  const last = inverse[8];
  const determinant = a * inverse[0] + b * inverse[3] + c * inverse[6];
  if (!Number.isFinite(determinant) || Math.abs(determinant) < 1e-15 || last === 0) {
    throw new RangeError('invertHomography: the map is singular');
  }
  return inverse.map((value) => value / last) as unknown as Homography;
}

/**
 * How many picture pixels one card millimetre spans at a point: the square root of the local area ratio.
 *
 * @example pxPerMmAt([9, 0, 0, 0, 16, 0, 0, 0, 1], { acrossMm: 42.8, downMm: 30 }) // 12
 */
export function pxPerMmAt(imageFromCard: Homography, point: PointMm): number {
  const half = 0.5;
  const left = toImage(imageFromCard, { ...point, acrossMm: point.acrossMm - half });
  const right = toImage(imageFromCard, { ...point, acrossMm: point.acrossMm + half });
  const up = toImage(imageFromCard, { ...point, downMm: point.downMm - half });
  const down = toImage(imageFromCard, { ...point, downMm: point.downMm + half });
  const area = (right.column - left.column) * (down.row - up.row) - (right.row - left.row) * (down.column - up.column);
  return Math.sqrt(Math.abs(area));
}
