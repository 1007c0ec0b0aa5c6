import type { CardGeometry } from '../card/card-geometry';
import { type GateReason, gateReason } from '../photo/reasons';
import { nailPlace } from '../rectify/notch-frame';
import { GLARE_LIGHT, GLARE_LIMIT_MM2, NAIL_ZONE_MM } from './constants';
import type { Segmentation } from './segmentation';
import type { ToeColours } from './toe-colours';

/**
 * The gates that need to know what is toe: is it in the notch, and does the nail shine?
 *
 * @param colours the corrected map
 * @param segmentation what was found on it
 * @param geometry the card as printed
 * @example toeGates(colours, segmentation, geometry) // []
 */
export function toeGates(colours: ToeColours, segmentation: Segmentation, geometry: CardGeometry): GateReason[] {
  const glareMm2 = brightAreaMm2(colours, geometry);
  if (glareMm2 > GLARE_LIMIT_MM2) return [gateReason('glare', glareMm2, GLARE_LIMIT_MM2)];
  return segmentation.toe === null ? [gateReason('toeNotInNotch', null, null)] : [];
}

/** Area around the place of the nail that is as bright as paper or clipped: a reflex, for no skin or plate is. */
function brightAreaMm2({ grid, red, green, blue, seen }: ToeColours, geometry: CardGeometry): number {
  const nail = nailPlace(geometry);
  let bright = 0;
  for (let row = 0; row < grid.heightPx; row++) {
    const downMm = grid.originDownMm + row / grid.pxPerMm - nail.downMm;
    if (Math.abs(downMm) > NAIL_ZONE_MM) continue;
    for (let column = 0; column < grid.widthPx; column++) {
      const acrossMm = grid.originAcrossMm + column / grid.pxPerMm - nail.acrossMm;
      if (Math.hypot(acrossMm, downMm) > NAIL_ZONE_MM) continue;
      const i = row * grid.widthPx + column;
      if (seen[i] === 0 || Math.min(red[i], green[i], blue[i]) > GLARE_LIGHT) bright++;
    }
  }
  return bright / grid.pxPerMm ** 2;
}
