import type { CardGeometry } from '../card/card-geometry';
import { MAP_PX_PER_MM } from './constants';
import { mapWindow } from './map-window';
import type { MapGrid } from './millimetre-map';
import { notchFrame } from './notch-frame';

/**
 * The grid of the millimetre map of one card.
 *
 * @param geometry the card
 * @param pxPerMm resolution, > 0
 * @example toeGrid(OWN_CARD).widthPx // 352
 */
export function toeGrid(geometry: CardGeometry, pxPerMm = MAP_PX_PER_MM): MapGrid {
  return mapWindow(notchFrame(geometry), pxPerMm);
}
