import { nothingAt } from '../photo/nothing-at';
import { partOf } from '../photo/part-of';
import type { UprightPhoto } from '../photo/upright-photo';
import { CLIPPED_CODE, MAD_TO_SIGMA } from '../rectify/constants';
import { type Homography, toImage } from '../rectify/homography';
import type { PointMm } from '../units';
import type { PatchReading } from './card-readings';
import { SPOT_READINGS_PER_SIDE } from './constants';

/** What a photo shows of one evenly coloured rectangle of the card. */
export type SpotReading = Omit<PatchReading, 'patch'>;

/**
 * Reads one evenly coloured rectangle of the card, on a grid of 9 × 9 places.
 *
 * @param photo the upright photo
 * @param imageFromCard the card's plane
 * @param centre of the rectangle, mm
 * @param size its sides, mm
 * @returns medians per channel in code values; null where any place lies outside the photo
 * @throws NotDecoded where only another part of the photo was decoded
 * @example readSpot(photo, fit.imageFromCard, patch.centre, { acrossMm: 4, downMm: 4 })?.codeMedian // [201, 198, 190]
 */
export function readSpot(photo: UprightPhoto, imageFromCard: Homography, centre: PointMm, size: PointMm): SpotReading | null {
  const { srgb } = photo;
  const { left, top, widthPx, heightPx } = partOf(photo);
  const [red, green, blue] = [new Uint8Array(READINGS), new Uint8Array(READINGS), new Uint8Array(READINGS)];
  let clipped = 0;
  for (let k = 0; k < READINGS; k++) {
    const { row, column } = toImage(imageFromCard, placeOf(k, centre, size));
    const [r, c] = [Math.round(row), Math.round(column)];
    if (r < top || c < left || r >= top + heightPx || c >= left + widthPx) return nothingAt(photo, r, c);
    const at = ((r - top) * widthPx + c - left) * 3;
    red[k] = srgb[at];
    green[k] = srgb[at + 1];
    blue[k] = srgb[at + 2];
    if (srgb[at] >= CLIPPED_CODE || srgb[at + 1] >= CLIPPED_CODE || srgb[at + 2] >= CLIPPED_CODE) clipped++;
  }
  const middle = middleOf(green);
  return {
    codeMedian: [middleOf(red), middle, middleOf(blue)],
    clippedShare: clipped / READINGS,
    spread: MAD_TO_SIGMA * middleOf(green.map((code) => Math.abs(code - middle))),
  };
}

/** An odd number: its median is one of the readings. */
const READINGS = SPOT_READINGS_PER_SIDE ** 2;

/** The median; puts the codes in order where they are. */
const middleOf = (codes: Uint8Array): number => codes.sort()[(READINGS - 1) / 2];

/** The k-th of evenly spaced places, sides included. */
function placeOf(k: number, centre: PointMm, size: PointMm): PointMm {
  const across = (k % SPOT_READINGS_PER_SIDE) / (SPOT_READINGS_PER_SIDE - 1) - 0.5;
  const down = Math.floor(k / SPOT_READINGS_PER_SIDE) / (SPOT_READINGS_PER_SIDE - 1) - 0.5;
  return { acrossMm: centre.acrossMm + size.acrossMm * across, downMm: centre.downMm + size.downMm * down };
}
