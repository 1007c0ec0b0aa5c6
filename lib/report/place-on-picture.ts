import { type Homography, invertHomography, toImage } from '../rectify/homography';
import type { PlaceOn } from './pen-lines';

/**
 * Where places of the card lie on a picture of it.
 *
 * @param cardFromPicture the picture's own map to card millimetres
 * @returns the mapping, in the pixels that the map counts in
 * @example placeOnPicture([0.1, 0, 0, 0, 0.1, 0, 0, 0, 1])([2, 1]) // [20, 10]
 */
export function placeOnPicture(cardFromPicture: Homography): PlaceOn {
  const pictureFromCard = invertHomography(cardFromPicture);
  return ([acrossMm, downMm]) => {
    const { column, row } = toImage(pictureFromCard, { acrossMm, downMm });
    return [column, row];
  };
}
