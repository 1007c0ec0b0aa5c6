import { OWN_CARD } from '../../../lib/card/own-card';
import { decodeSrgb } from '../../../lib/colour/decode-srgb';
import { erythemaIndexMap } from '../../../lib/colour/erythema-index-map';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { type Homography, toImage } from '../../../lib/rectify/homography';
import { gridPoint } from '../../../lib/rectify/grid-point';
import { nailPlace } from '../../../lib/rectify/notch-frame';
import { resampleMap } from '../../../lib/rectify/resample-map';
import { toeGrid } from '../../../lib/rectify/toe-grid';
import type { ToeColours } from '../../../lib/segment/toe-colours';

/** What a card would have told: where the middle of the nail is, how large a millimetre, and where the tip points. */
export interface AssumedPlace {
  readonly column: number;
  readonly row: number;
  readonly pxPerMm: number;
  /** Clockwise from up. */
  readonly tipDeg: number;
}

const table = Float32Array.from({ length: 256 }, (_, code) => decodeSrgb(code));

/** The plane of a card that nobody laid there. */
export function assumedPlane({ column, row, pxPerMm, tipDeg }: AssumedPlace): Homography {
  const nail = nailPlace(OWN_CARD);
  const [sin, cos] = [pxPerMm * Math.sin((tipDeg * Math.PI) / 180), pxPerMm * Math.cos((tipDeg * Math.PI) / 180)];
  return [cos, -sin, column - cos * nail.acrossMm + sin * nail.downMm, sin, cos, row - sin * nail.acrossMm - cos * nail.downMm, 0, 0, 1];
}

/** The millimetre map of a photo without a card: scale assumed, colours as the camera gave them (plain sRGB, white = 1). */
export function mapWithoutCard(photo: UprightPhoto, place: AssumedPlace): ToeColours {
  const map = resampleMap(photo, assumedPlane(place), toeGrid(OWN_CARD), { red: table, green: table, blue: table });
  // Black borders that somebody added show nothing.
  for (let i = 0; i < map.seen.length; i++) if (map.red[i] + map.green[i] + map.blue[i] === 0) map.seen[i] = 0;
  return { ...map, erythemaIndex: erythemaIndexMap(map) };
}

/** A mask of the photo as it lies on the map. */
export function maskOnMap(mask: Uint8Array, widthPx: number, place: AssumedPlace): Uint8Array {
  const grid = toeGrid(OWN_CARD);
  const plane = assumedPlane(place);
  const heightPx = mask.length / widthPx;
  return Uint8Array.from({ length: grid.widthPx * grid.heightPx }, (_, i) => {
    const { column, row } = toImage(plane, gridPoint(grid, Math.floor(i / grid.widthPx), i % grid.widthPx));
    const [c, r] = [Math.round(column), Math.round(row)];
    return c >= 0 && r >= 0 && c < widthPx && r < heightPx ? mask[r * widthPx + c] : 0;
  });
}
