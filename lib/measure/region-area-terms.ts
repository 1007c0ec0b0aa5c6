import type { Region } from '../segment/segmentation';
import { areaTerms } from './area-terms';
import type { BudgetTerm } from './combine-budget';
import { PERIMETER_SPACING_MM } from './constants';
import type { MeasureInput } from './measure-input';
import { regionAreaMm2 } from './region-area';
import { regionEdge } from './region-edge';
import { scaleTerms } from './scale-terms';
import { sightPerimeterMm } from './sight-stretch';

/** The measurands that are the projected area of a region. */
export type AreaKey = 'erythemaArea' | 'rawArea' | 'maceratedArea';

/**
 * Every influence on the projected area of one region but the toe's body (`bodyTerms`).
 *
 * @param input of the whole stage: scale, and for erythema the areas at a lower and a higher threshold
 * @param key which area
 * @param region its outline, not empty
 * @returns terms in mm²; `threshold` is half the difference of the two areas, one standard uncertainty either way
 * @example regionAreaTerms(input, 'erythemaArea', region).map(({ name }) => name) // ['printScale', 'homographyResidual', 'nailHeight', 'lensDistortion', 'boundaryCommon', 'boundaryLocal', 'sampling']
 */
export function regionAreaTerms(input: MeasureInput, key: AreaKey, region: Region): BudgetTerm[] {
  const at = key === 'erythemaArea' ? input.thresholdAreasMm2 : undefined;
  const threshold: BudgetTerm[] = at ? [{ name: 'threshold', u: Math.abs(at[1] - at[0]) / 2 }] : [];
  // The wobble itself makes an outline longer; at a coarser spacing it no longer counts as edge.
  const perimeterMm = sightPerimeterMm(regionEdge(region.rings, PERIMETER_SPACING_MM), input.relief ?? null);
  return [
    ...scaleTerms(input.scale, regionAreaMm2(region.rings), 'area'),
    ...areaTerms(perimeterMm, region.boundaryUMm, input.scale.pxPerMm),
    ...threshold,
  ];
}
