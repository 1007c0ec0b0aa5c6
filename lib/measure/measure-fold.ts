import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import { FOLD_SEEN_U } from './constants';
import { foldSeenShare } from './fold-seen-share';
import { type FoldSide, foldSide } from './fold-side';
import { measureFoldStrip } from './measure-fold-strip';
import type { MeasureInput } from './measure-input';
import { measureRawBeyond } from './measure-raw-beyond';

export interface FoldMeasurements {
  readonly foldStripArea: Budgeted;
  readonly rawBeyondMargin: Budgeted;
  readonly foldSeenShare: Budgeted;
}

/**
 * What needs to know which side of the treated margin is the fold.
 *
 * @param input of the whole stage, outlines straightened
 * @returns the fold's strip, raw tissue beyond its edge, and how much of it the camera could see
 * @example measureFold({ ...input, outlines: { ...input.outlines, nailFoldMargin: null } }).foldStripArea.measurement // { notMeasured: 'marginNotFound' }
 */
export function measureFold(input: MeasureInput): FoldMeasurements {
  const fold = foldSide(input.outlines);
  return {
    foldStripArea: measureFoldStrip(input, fold),
    rawBeyondMargin: measureRawBeyond(input, fold),
    foldSeenShare: measureFoldSeen(input, fold),
  };
}

function measureFoldSeen(input: MeasureInput, fold: FoldSide | null): Budgeted {
  if (fold === null) return refused('marginNotFound');
  const share = foldSeenShare(fold, input.relief ?? null);
  return share === null ? refused('toeShapeUnknown') : budgeted(input, 'foldSeenShare', 100 * share, [{ name: 'toeBody', u: 100 * FOLD_SEEN_U }]);
}
