import { ITA_CLASS_LOWER_BOUNDS } from '../colour/constants';
import { CLINICAL_STEP_EI, EDGE_RING_FROM_MM, EDGE_RING_TO_MM, EVIDENCE_FLOOR_EI, EVIDENCE_K } from './constants';
import { distanceField } from './distance-field';
import type { MapGrid } from '../rectify/millimetre-map';
import type { Evidence, ReferenceSkin } from './segmentation';

/** Below this typology angle redness often shows little in a photo (classes brown and dark). */
const DARKER_SKIN_BELOW_DEG = ITA_CLASS_LOWER_BOUNDS[3].aboveDeg;

/**
 * The least step of the index that stands out from this photo's skin: `max(k · scatter, floor)`.
 *
 * @example leastVisibleStepEi(reference) // 1.8
 */
export function leastVisibleStepEi(reference: ReferenceSkin): number {
  return Math.max(EVIDENCE_K * reference.noiseEi, EVIDENCE_FLOOR_EI);
}

/**
 * Could redness of clinical size be seen at all on this skin in this light? A missing region means nothing otherwise.
 *
 * @example couldRednessBeSeen(reference) // true
 */
export function couldRednessBeSeen(reference: ReferenceSkin): boolean {
  return leastVisibleStepEi(reference) < CLINICAL_STEP_EI && reference.ita.angleDeg > DARKER_SKIN_BELOW_DEG;
}

/**
 * Asks the picture, not the model, whether the region is there: the step of the index across its outline and the
 * excess inside, against the reference skin's own scatter.
 *
 * @param grid the map
 * @param inside mask of the region
 * @param skin mask of skin that may be compared (toe without nail, wound and clipped places)
 * @param excessEi index above the reference field
 * @param reference the reference skin
 * @returns the evidence, or null when there is no skin on one side of the outline
 * @example weighEvidence(grid, inside, skin, excess, reference)?.verdict // 'supported'
 */
export function weighEvidence(
  grid: MapGrid,
  inside: Uint8Array,
  skin: Uint8Array,
  excessEi: Float32Array,
  reference: ReferenceSkin,
): Evidence | null {
  const toInside = distanceField(grid, inside, EDGE_RING_TO_MM);
  const outside = new Uint8Array(inside.length);
  for (let i = 0; i < outside.length; i++) outside[i] = 1 - inside[i];
  const toOutside = distanceField(grid, outside, EDGE_RING_TO_MM);
  const within = meanBetween(excessEi, skin, toOutside, EDGE_RING_FROM_MM, EDGE_RING_TO_MM);
  const beyond = meanBetween(excessEi, skin, toInside, EDGE_RING_FROM_MM, EDGE_RING_TO_MM);
  const plateauEi = meanBetween(excessEi, skin, toOutside, EDGE_RING_TO_MM, Infinity) ?? within;
  if (within === null || beyond === null || plateauEi === null) return null;
  const edgeStepEi = within - beyond;
  const supported = edgeStepEi >= leastVisibleStepEi(reference) && plateauEi > 0;
  return {
    plateauEi,
    edgeStepEi,
    contrastToNoise: edgeStepEi / Math.max(reference.noiseEi, 1e-6),
    verdict: supported ? 'supported' : reference.ita.angleDeg > DARKER_SKIN_BELOW_DEG ? 'weak' : 'tooDark',
  };
}

/** Mean over skin at distances from … to, both included; null where there is none. */
function meanBetween(plane: Float32Array, skin: Uint8Array, distanceMm: Float32Array, fromMm: number, toMm: number): number | null {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < plane.length; i++) {
    if (skin[i] !== 1 || distanceMm[i] < fromMm || distanceMm[i] > toMm || !Number.isFinite(plane[i])) continue;
    sum += plane[i];
    count++;
  }
  return count > 0 ? sum / count : null;
}
