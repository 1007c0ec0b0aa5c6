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
  const toOutside = distanceField(grid, inside.map((one) => 1 - one), EDGE_RING_TO_MM);
  const ring = (mm: number): boolean => mm >= EDGE_RING_FROM_MM && mm <= EDGE_RING_TO_MM;
  const [inner, outer, core] = [new Mean(), new Mean(), new Mean()];
  for (let i = 0; i < excessEi.length; i++) {
    if (skin[i] !== 1 || !Number.isFinite(excessEi[i])) continue;
    if (ring(toOutside[i])) inner.add(excessEi[i]);
    if (ring(toInside[i])) outer.add(excessEi[i]);
    if (toOutside[i] >= EDGE_RING_TO_MM) core.add(excessEi[i]);
  }
  const [within, beyond] = [inner.value, outer.value];
  const plateauEi = core.value ?? within;
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

class Mean {
  private sum = 0;
  private count = 0;

  add(value: number): void {
    this.sum += value;
    this.count++;
  }

  get value(): number | null {
    return this.count > 0 ? this.sum / this.count : null;
  }
}
