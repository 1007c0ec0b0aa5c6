import type { RawTissue, Share } from '../segment/raw-tissue';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import { MIXED_PIXELS_U_PERCENT } from './constants';
import type { MeasureInput } from './measure-input';
import { regionRefusal } from './region-refusal';

export interface RawTissueShares {
  readonly rawRedShare: Budgeted;
  readonly rawYellowShare: Budgeted;
  readonly rawDarkShare: Budgeted;
}

/**
 * Red, yellow and dark shares of the raw area, in per cent.
 *
 * @param input of the whole stage
 * @returns per cent, or a reason; never a share of nothing
 * @example measureRawTissue({ ...input, rawTissue: null }).rawRedShare.measurement // { notMeasured: 'noRegionFound' }
 */
export function measureRawTissue(input: MeasureInput): RawTissueShares {
  const tissue: RawTissue | null = regionRefusal(input.outlines.raw, input.grid) === null ? (input.rawTissue ?? null) : null;
  const share = (key: keyof RawTissueShares, one: Share | undefined): Budgeted =>
    one ? budgeted(input, key, 100 * one.value, [{ name: 'classLimits', u: 100 * one.u }, { name: 'mixedPixels', u: MIXED_PIXELS_U_PERCENT }]) : refused('noRegionFound');
  return {
    rawRedShare: share('rawRedShare', tissue?.red),
    rawYellowShare: share('rawYellowShare', tissue?.yellow),
    rawDarkShare: share('rawDarkShare', tissue?.dark),
  };
}
