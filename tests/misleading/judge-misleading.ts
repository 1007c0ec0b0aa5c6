import { OWN_CARD } from '../../lib/card/own-card';
import type { analysisPorts } from '../../lib/edges/analysis-ports';
import { analysePhoto } from '../../lib/pipeline/analyse-photo';
import type { Measurement } from '../../lib/result';
import { type Misleading, misleadingSpec } from '../phantom/misleading-spec';
import { renderKept } from '../phantom/render-kept';
import type { SkinClass } from '../phantom/skin/skin-class';

/** Classes in which redness is measured and not left to a person. */
const CLASSES: readonly SkinClass[] = ['very light', 'light', 'intermediate', 'tan'];

export interface MisleadingPhoto {
  readonly kind: Misleading;
  readonly skinClass: SkinClass;
  readonly trueMm2: number;
  /** What the tool said of the area of redness; null where a gate asked for another photo. */
  readonly area: Measurement | null;
}

/** Renders and judges `each` photos of one kind, the classes in turn. */
export async function judgeMisleading(kind: Misleading, each: number, seed: number, isRed: boolean, ports: Awaited<ReturnType<typeof analysisPorts>>): Promise<MisleadingPhoto[]> {
  const classOf = (i: number) => CLASSES[i % CLASSES.length];
  const specs = Array.from({ length: each }, (_, i) => misleadingSpec(kind, 1009 * seed + i, classOf(i), isRed));
  const photos: MisleadingPhoto[] = [];
  await renderKept(specs, async (i, { jpeg, truth }) => {
    const result = await analysePhoto(jpeg, { geometry: OWN_CARD, print: { scale: 1, relativeU: 0.005, confirmed: true }, context: { receivedAt: null, knownSha256: new Set() } }, ports);
    const measurement = result.analysed ? result.analysis.measurement : null;
    photos.push({ kind, skinClass: classOf(i), trueMm2: truth.measurements?.erythemaArea ?? 0, area: measurement && measurement.measurements.erythemaArea });
  }, 2);
  return photos;
}

/** A number that would mislead a rule: redness where there is none, or an area off by more than a factor of two. */
export function isGross({ trueMm2, area }: MisleadingPhoto): boolean {
  if (!area || !('value' in area)) return false;
  return area.value > 2 * Math.max(trueMm2, MOST_FALSE_MM2) || area.value < trueMm2 / 2;
}

/** False redness that the accuracy table allows, mm². */
export const MOST_FALSE_MM2 = 3;
