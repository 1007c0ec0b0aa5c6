import type { UprightPhoto } from '../photo/upright-photo';
import type { Homography } from '../rectify/homography';
import type { MapGrid } from '../rectify/millimetre-map';
import { resampleMap } from '../rectify/resample-map';

/** The identity: code values stay code values, for looking at and never for measuring. */
const AS_CODED = Float32Array.from({ length: 256 }, (_, code) => code);

/**
 * The photo as it looks in the card's plane, for people to see.
 *
 * @param photo the upright photo
 * @param imageFromCard the card's plane
 * @param window what to show, at which resolution
 * @returns red, green, blue interleaved
 * @example rectifiedPicture(photo, fit.imageFromCard, window).length // width · height · 3
 */
export function rectifiedPicture(photo: UprightPhoto, imageFromCard: Homography, window: MapGrid): Uint8Array {
  const map = resampleMap(photo, imageFromCard, window, { red: AS_CODED, green: AS_CODED, blue: AS_CODED });
  const picture = new Uint8Array(window.widthPx * window.heightPx * 3);
  for (let i = 0; i < map.red.length; i++) {
    picture[3 * i] = map.red[i];
    picture[3 * i + 1] = map.green[i];
    picture[3 * i + 2] = map.blue[i];
  }
  return picture;
}
