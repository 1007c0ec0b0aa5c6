import type { CardGeometry } from '../card/card-geometry';
import { type GateReason, gateReason } from '../photo/reasons';
import type { MapGrid } from '../rectify/millimetre-map';
import { nailPlace } from '../rectify/notch-frame';
import { GLARE_LIGHT, GLARE_LIMIT_MM2, NAIL_ZONE_MM } from './constants';
import type { Region, Segmentation } from './segmentation';
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
  if (segmentation.toe === null) return [gateReason('toeNotInNotch', null, null)];
  const glareMm2 = brightAreaMm2(colours, segmentation.toe, geometry);
  return glareMm2 > GLARE_LIMIT_MM2 ? [gateReason('glare', glareMm2, GLARE_LIMIT_MM2)] : [];
}

/**
 * Area of the toe around the place of the nail that is as bright as paper or clipped: a reflex, for no skin or plate
 * is. Between the toe's left and right outline everything counts as toe, since a reflex can look like a hole in it.
 */
function brightAreaMm2({ grid, red, green, blue, seen }: ToeColours, toe: Region, geometry: CardGeometry): number {
  const nail = nailPlace(geometry);
  const spans = rowSpans(grid, toe);
  let bright = 0;
  for (let row = 0; row < grid.heightPx; row++) {
    const downMm = grid.originDownMm + row / grid.pxPerMm - nail.downMm;
    for (let column = spans[2 * row]; column <= spans[2 * row + 1]; column++) {
      const acrossMm = grid.originAcrossMm + column / grid.pxPerMm - nail.acrossMm;
      if (acrossMm * acrossMm + downMm * downMm > NAIL_ZONE_MM * NAIL_ZONE_MM) continue;
      const i = row * grid.widthPx + column;
      if (seen[i] === 0 || Math.min(red[i], green[i], blue[i]) > GLARE_LIGHT) bright++;
    }
  }
  return bright / grid.pxPerMm ** 2;
}

/** First and last column of the toe in every row; first > last where there is none. */
function rowSpans(grid: MapGrid, toe: Region): Int32Array {
  const spans = new Int32Array(2 * grid.heightPx).map((_, i) => (i % 2 === 0 ? grid.widthPx : -1));
  for (const { acrossMm, downMm } of toe.rings.flatMap(({ ring }) => ring)) {
    const row = Math.min(grid.heightPx - 1, Math.max(0, Math.round((downMm - grid.originDownMm) * grid.pxPerMm)));
    const column = Math.min(grid.widthPx - 1, Math.max(0, Math.round((acrossMm - grid.originAcrossMm) * grid.pxPerMm)));
    spans[2 * row] = Math.min(spans[2 * row], column);
    spans[2 * row + 1] = Math.max(spans[2 * row + 1], column);
  }
  return spans;
}
