import { EDGE_SHARE, ERYTHEMA_LEVEL, HIGHEST_LEVEL, INDEX_SAY, LOWEST_LEVEL, OUTLINE_SMOOTH_MM, PLATEAU_QUANTILE, SURROUNDINGS_FROM_MM, SURROUNDINGS_TO_MM } from './constants';
import { distanceField } from './distance-field';
import { smoothMasked } from './smooth-masked';
import type { MapGrid } from '../rectify/millimetre-map';

/** Fewer pixels of surrounding skin than this say nothing of its level. */
const LEAST_AROUND = 50;
const BINS = 512;

/**
 * At which level of the model's field the outline of redness is drawn. The model finds the region, the picture says how
 * far it goes: where the index falls to half between plateau and surroundings closer in than the model's own outline, a
 * higher level is taken, and a lower one where it goes further out. Soft edges need it most.
 *
 * @param grid the map
 * @param field the model's redness field
 * @param inside mask of the region at `ERYTHEMA_LEVEL`
 * @param skin mask of skin that may be compared
 * @param excessEi index above the reference field
 * @returns a level between `LOWEST_LEVEL` and `HIGHEST_LEVEL`; `ERYTHEMA_LEVEL` where there is nothing to compare
 * @example outlineLevel(grid, fields.erythema, inside, skin, excessEi) // 0.49
 */
export function outlineLevel(grid: MapGrid, field: Float32Array, inside: Uint8Array, skin: Uint8Array, excessEi: Float32Array): number {
  const away = distanceField(grid, inside, SURROUNDINGS_TO_MM);
  const smooth = smoothMasked(grid, excessEi, skin, OUTLINE_SMOOTH_MM);
  const [core, around] = [valuesWhere(smooth, skin, (i) => inside[i] !== 0), valuesWhere(smooth, skin, (i) => away[i] > SURROUNDINGS_FROM_MM && away[i] <= SURROUNDINGS_TO_MM)];
  if (core.length === 0) return ERYTHEMA_LEVEL;
  const ground = around.length >= LEAST_AROUND ? quantileOf(around, 0.5) : 0;
  const threshold = ground + EDGE_SHARE * (quantileOf(core, PLATEAU_QUANTILE) - ground);
  // How many pixels near the region lie above each level of the field, from the highest level down.
  const counts = new Uint32Array(BINS);
  let above = 0;
  for (let i = 0; i < inside.length; i++) {
    if (skin[i] === 0 || !(away[i] <= SURROUNDINGS_TO_MM)) continue;
    counts[Math.min(BINS - 1, Math.floor(field[i] * BINS))]++;
    if (smooth[i] > threshold) above++;
  }
  const wanted = core.length * (above / core.length) ** INDEX_SAY;
  let bin = BINS;
  for (let counted = 0; bin > 0 && counted < wanted; ) counted += counts[--bin];
  return Math.min(HIGHEST_LEVEL, Math.max(LOWEST_LEVEL, bin / BINS));
}

/** Finite values of skin at the places asked for, in order. */
function valuesWhere(plane: Float32Array, skin: Uint8Array, isMeant: (i: number) => boolean): Float32Array {
  const values = new Float32Array(plane.length);
  let n = 0;
  for (let i = 0; i < plane.length; i++) if (skin[i] !== 0 && Number.isFinite(plane[i]) && isMeant(i)) values[n++] = plane[i];
  return values.subarray(0, n).sort();
}

const quantileOf = (sorted: Float32Array, share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
