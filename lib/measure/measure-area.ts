import type { Region } from '../segment/segmentation';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import type { MeasureInput } from './measure-input';
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
  return budgeted(input, key, regionAreaMm2(region.rings), regionAreaTerms(input, key, region));
}
