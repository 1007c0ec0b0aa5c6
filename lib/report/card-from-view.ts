import type { Homography } from '../rectify/homography';

/** A picture's size in pixels. */
export interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

const HALF_PX = 0.5;

/**
 * The map from a smaller picture, as it is shown, to card millimetres, from the map of the photo it was made from. Pages
 * count from the corner of the upper left pixel, analyses from its centre.
 *
 * @param cardFromImage photo pixels → card millimetres
 * @param photo size of the photo, upright or as stored: the longer edge counts
 * @param view size of the shown picture
 * @returns nine numbers, shown pixels → card millimetres; null where the two cannot be one picture
 * @example cardFromView([0.1, 0, 0, 0, 0.1, 0, 0, 0, 1], { widthPx: 200, heightPx: 100 }, { widthPx: 100, heightPx: 50 }) // [0.2, 0, -0.05, 0, 0.2, -0.05, 0, 0, 1]
 */
export function cardFromView(cardFromImage: Homography, photo: PictureSize, view: PictureSize): Homography | null {
  const factor = longEdge(photo) / longEdge(view);
  // Rounded to whole pixels the shorter edge may be off by one; a cropped picture is off by more.
  if (Math.abs(shortEdge(view) * factor - shortEdge(photo)) > 1.5 * Math.max(1, factor)) return null;
  const m = cardFromImage;
  const row = (at: 0 | 3 | 6): [number, number, number] => [m[at] * factor, m[at + 1] * factor, m[at + 2] - HALF_PX * (m[at] + m[at + 1])];
  const all = [...row(0), ...row(3), ...row(6)];
  return all.map((value) => value / all[8]) as unknown as Homography;
}

const longEdge = ({ widthPx, heightPx }: PictureSize): number => Math.max(widthPx, heightPx);
const shortEdge = ({ widthPx, heightPx }: PictureSize): number => Math.min(widthPx, heightPx);
