import type { Region } from '../segment/segmentation';
import { bodyTerms, type BodyVariant } from './body-variants';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import type { MeasureInput, Outlines } from './measure-input';
import { regionAreaMm2 } from './region-area';
import { regionAreaTerms } from './region-area-terms';
import type { AreaKey } from './region-area-terms';
import { regionRefusal } from './region-refusal';

/**
 * Projected area of one region with its budget.
 *
 * @param input of the whole stage
 * @param key which area
 * @param region its outline, or null
 * @returns mm² or a reason; an empty region is a reason, never zero
 * @example measureArea(input, 'rawArea', null).measurement // { notMeasured: 'noRegionFound' }
 */
export function measureArea(input: MeasureInput, key: AreaKey, region: Region | null): Budgeted {
  const refusal = regionRefusal(region, input.grid);
  if (refusal !== null || region === null) return refused(refusal ?? 'noRegionFound');
  const areaMm2 = regionAreaMm2(region.rings);
  const overOther = ({ outlines }: BodyVariant): number => regionAreaMm2(outlines[REGION_OF[key]]?.rings ?? []);
  return budgeted(input, key, areaMm2, [...regionAreaTerms(input, key, region), ...bodyTerms(input, areaMm2, 'area', overOther)]);
}

const REGION_OF = { erythemaArea: 'erythema', rawArea: 'raw', maceratedArea: 'macerated' } as const satisfies Record<AreaKey, keyof Outlines>;
