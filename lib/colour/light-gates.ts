import { gateReason } from '../photo/reasons';
import type { GateReason } from '../photo/reasons';
import type { WhiteSample } from './card-readings';
import { CLIPPED_SHARE_LIMIT, PAPER_CODE_LIMIT, UNEVEN_RATIO_LIMIT, UNEVEN_RESIDUAL_LIMIT } from './constants';
import { sortPaperSpots } from './paper-spots';
import type { Shading } from './shading';

/**
 * The gates that need the card's paper: too bright, too dark, uneven light beyond correction.
 * @param spots code values of small spots of bare paper all over the card; none = no gate can speak
 * @param shading the light fitted to them; null where it could not be fitted
 * @returns the gates that failed, each with what was measured: share of clipped paper; code value of paper; brightest
 * over darkest paper, or, at a shadow's edge, paper's relative departure from smooth light
 * @example lightGates([], null) // []
 */
export function lightGates(spots: readonly WhiteSample[], shading: Shading | null): GateReason[] {
  const { clippedShare, level } = sortPaperSpots(spots);
  const failed: GateReason[] = [];
  if (clippedShare > CLIPPED_SHARE_LIMIT) failed.push(gateReason('clipped', clippedShare, CLIPPED_SHARE_LIMIT));
  if (level < PAPER_CODE_LIMIT) failed.push(gateReason('tooDark', level, PAPER_CODE_LIMIT));
  if (shading && shading.residual > UNEVEN_RESIDUAL_LIMIT) {
    failed.push(gateReason('unevenLight', shading.residual, UNEVEN_RESIDUAL_LIMIT));
  } else if (shading && shading.ratio > UNEVEN_RATIO_LIMIT) {
    failed.push(gateReason('unevenLight', shading.ratio, UNEVEN_RATIO_LIMIT));
  }
  return failed;
}
