import { OWN_CARD } from '../../../lib/card/own-card';
import { toeGrid } from '../../../lib/rectify/toe-grid';
import type { ToeColours } from '../../../lib/segment/toe-colours';
import type { TissueFields } from '../../../lib/segment/segmentation';
import type { RingMm } from '../../../lib/units';
import type { KnownOutlines } from './draw-fields';

/** The map of this project's own card. */
export const GRID = toeGrid(OWN_CARD);

export const box = (left: number, top: number, right: number, bottom: number): RingMm => [
  { acrossMm: left, downMm: top },
  { acrossMm: right, downMm: top },
  { acrossMm: right, downMm: bottom },
  { acrossMm: left, downMm: bottom },
];

/** A square toe: plate 36–44 mm across, a groove of 2 mm to its right, redness 4 mm wide beside the groove. */
export const SQUARE_TOE: KnownOutlines = {
  toe: [box(32, 22, 54, 66)],
  nailPlate: [box(36, 25, 44, 38)],
  groove: [box(44, 25, 46, 38)],
  raw: [box(44.5, 28, 46, 34)],
  macerated: [],
  erythema: [box(46, 26, 50, 40)],
  margin: [
    { acrossMm: 46, downMm: 25 },
    { acrossMm: 46, downMm: 38 },
    { acrossMm: 41, downMm: 38 },
  ],
};

/** Evenly lit skin whose erythema index stands `stepEi` higher inside the redness. */
export function squareToeColours(fields: TissueFields, stepEi: number): ToeColours {
  const pixels = GRID.widthPx * GRID.heightPx;
  const ei = new Float32Array(pixels).map((_, i) => 18 + stepEi * fields.erythema[i] + 0.6 * Math.sin(i * 12.9898));
  const green = new Float32Array(pixels).fill(0.3);
  const red = ei.map((value) => 0.3 * 10 ** (value / 100));
  return { grid: GRID, red, green, blue: new Float32Array(pixels).fill(0.22), seen: new Uint8Array(pixels).fill(1), erythemaIndex: ei };
}
