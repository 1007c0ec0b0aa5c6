import type { CardGeometry } from '../card/card-geometry';
import type { PointMm } from '../units';
import { MAP_ABOVE_APEX_MM, MAP_BELOW_APEX_MM, MAP_PX_PER_MM, MAP_WIDTH_MM } from './constants';
import type { MapGrid } from './millimetre-map';
import { type NotchFrame, notchFrame } from './notch-frame';

/**
 * The grid of the millimetre map: 44 × 56 mm around the notch, tip of the toe up.
 *
 * @param geometry the card
 * @param pxPerMm resolution, > 0
 * @example toeGrid(geometry).widthPx // 352
 */
export function toeGrid(geometry: CardGeometry, pxPerMm = MAP_PX_PER_MM): MapGrid {
  return mapWindow(notchFrame(geometry), pxPerMm);
}

/** The same window from the notch's frame alone. `mapWindow(notchFrame(geometry), 18).widthPx` is 792. */
export function mapWindow(frame: NotchFrame, pxPerMm: number): MapGrid {
  if (!(pxPerMm > 0)) throw new RangeError(`mapWindow: pxPerMm must be positive, received ${pxPerMm}`);
  const widthPx = Math.round(MAP_WIDTH_MM * pxPerMm);
  const heightPx = Math.round((MAP_ABOVE_APEX_MM + MAP_BELOW_APEX_MM) * pxPerMm);
  return {
    originAcrossMm: frame.axisAcrossMm - (widthPx - 1) / 2 / pxPerMm,
    originDownMm: frame.apexDownMm - MAP_ABOVE_APEX_MM,
    pxPerMm,
    widthPx,
    heightPx,
  };
}

/** Card position of a (fractional) map pixel. `gridPoint(grid, 0, 0)` is the centre of the first pixel. */
export function gridPoint(grid: MapGrid, row: number, column: number): PointMm {
  return { acrossMm: grid.originAcrossMm + column / grid.pxPerMm, downMm: grid.originDownMm + row / grid.pxPerMm };
}
