import { MAP_ABOVE_APEX_MM, MAP_BELOW_APEX_MM, MAP_WIDTH_MM } from './constants';
import type { MapGrid } from './millimetre-map';
import type { NotchFrame } from './notch-frame';

/**
 * The window that a millimetre map shows: 44 × 56 mm around the notch, tip of the toe up.
 *
 * @param frame where the notch lies on the card
 * @param pxPerMm resolution, > 0
 * @throws RangeError where pxPerMm is not positive
 * @example mapWindow({ axisAcrossMm: 42.8, apexDownMm: 18, widthMm: 34 }, 18).widthPx // 792
 */
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
