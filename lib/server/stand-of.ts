import type { Rings } from '../measure/region-area';
import { fitToeCylinder } from '../measure/toe-cylinder';
import { CARD_DOWN } from '../measure/toe-frame';
import { toePlace } from '../measure/toe-place';
import type { AnalysisJson, OutlineJson } from '../pipeline/analysis-json';
import type { Stand } from './lay-over';

/** Lines of other photos are laid over this one where its toe lies, and as its camera leans. */
export function standOf(json: AnalysisJson | null): Stand {
  const rings = (outlines: readonly OutlineJson[] | null | undefined): Rings => (outlines ?? []).map(({ ring, hole }) => ({ hole, ring: ring.map(([acrossMm, downMm]) => ({ acrossMm, downMm })) }));
  const toe = rings(json?.outlines?.toe);
  const cylinder = fitToeCylinder(toe, CARD_DOWN);
  const lens = json?.card?.lens ?? null;
  return { place: toePlace(rings(json?.outlines?.nailPlate), toe), relief: cylinder && lens && { cylinder, lens } };
}
