import type { MapGrid } from '../rectify/millimetre-map';
import type { EdgeCost } from './cheapest-path';
import { ERYTHEMA_LEVEL, HALF } from './constants';
import type { TissueFields } from './segmentation';
import { smoothMasked } from './smooth-masked';
import type { ToeColours } from './toe-colours';

/** Outlines that a person may draw anew. */
export const DRAWN_OUTLINES = ['erythema', 'nailFoldMargin', 'raw'] as const;
export type DrawnOutline = (typeof DRAWN_OUTLINES)[number];

/**
 * Even on the clearest edge a line costs this much. With less, it takes long ways round along the rim of soggy skin: on
 * own phantoms with 4 clicks the worst margin was 0.9 mm off at 0.04 and 0.3, and 0.3 mm at 0.5. Ours.
 */
const LEAST_COST = 0.5;
/** Edges are looked for at this scale: nail fold and wound have sharp ones, redness fades over millimetres. Ours. */
const SCALE_MM: Readonly<Record<DrawnOutline, number>> = { erythema: 0.9, nailFoldMargin: 0.3, raw: 0.3 };
/** The step that counts as a full edge is exceeded by this share of the toe. Ours. */
const STRONG_EDGE_SHARE = 0.03;
/** How far the field may be from its outline's level and still count half. Ours. */
const LEVEL_WIDTH = 0.2;
/** Keeps the logarithm of light finite. */
const DARK = 0.005;

/**
 * How little a line costs through each pixel: half of it by the picture's own edges, in light and in redness, half by
 * what the tissue model holds for this outline.
 *
 * @param colours the map's colours
 * @param fields tissue fields on the same grid
 * @param outline which outline is drawn
 * @returns costs from 0.5 on the clearest edge to 1 where there is none
 * @example edgeCost(colours, fields, 'nailFoldMargin').cost.length
 */
export function edgeCost(colours: ToeColours, fields: TissueFields, outline: DrawnOutline): EdgeCost {
  const { grid } = fields;
  const inLight = steps(grid, lightOf(colours), fields.toe, SCALE_MM[outline]);
  const inRedness = steps(grid, colours.erythemaIndex, fields.toe, SCALE_MM[outline]);
  const held = modelEdge(fields, outline);
  // A shadow's edge is a step of light and none of redness.
  const seen = outline === 'erythema' ? inRedness : inLight.map((step, i) => Math.max(step, inRedness[i]));
  return { grid, cost: seen.map((step, i) => 1 - (1 - LEAST_COST) * (0.5 * step + 0.5 * held[i])) };
}

function lightOf({ red, green, blue }: ToeColours): Float32Array {
  return green.map((value, i) => Math.log(DARK + Math.max(0, red[i] + value + blue[i])));
}

/** 0…1: near the margin its own field, near a region the closeness to its outline's level. */
function modelEdge({ foldMargin, erythema, raw }: TissueFields, outline: DrawnOutline): Float32Array {
  if (outline === 'nailFoldMargin') return foldMargin;
  const [field, level] = outline === 'erythema' ? [erythema, ERYTHEMA_LEVEL] : [raw, HALF];
  return field.map((value) => 1 / (1 + ((value - level) / LEVEL_WIDTH) ** 2));
}

/** Size of a plane's local step, 1 where it is among the strongest on the toe. */
function steps(grid: MapGrid, plane: Float32Array, toe: Float32Array, scaleMm: number): Float32Array {
  const known = Uint8Array.from(plane, (value) => (Number.isFinite(value) ? 1 : 0));
  const smooth = smoothMasked(grid, plane, known, scaleMm);
  const { widthPx, heightPx } = grid;
  const found = new Float32Array(plane.length);
  for (let row = 1; row < heightPx - 1; row++) {
    for (let i = row * widthPx + 1; i < (row + 1) * widthPx - 1; i++) {
      const size = Math.hypot(smooth[i + 1] - smooth[i - 1], smooth[i + widthPx] - smooth[i - widthPx]);
      found[i] = Number.isFinite(size) ? size : 0;
    }
  }
  const onToe = found.filter((_, i) => toe[i] >= HALF).sort();
  const strong = onToe[Math.floor(onToe.length * (1 - STRONG_EDGE_SHARE))] || 1;
  return found.map((size) => Math.min(1, size / strong));
}
