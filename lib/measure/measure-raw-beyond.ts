import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import { CONTENDER_SPAN } from './constants';
import { edgePeak } from './edge-peak';
import type { FoldSide } from './fold-side';
import type { MeasureInput } from './measure-input';
import { peakTerms } from './peak-terms';
import { regionEdge } from './region-edge';
import { regionRefusal } from './region-refusal';
import { scaleTerms } from './scale-terms';
import { skinSlopeTerm } from './skin-slope-term';
import { splitBoundary } from './split-boundary';

/**
 * How far raw tissue stands out over the fold's edge: the greatest distance of its outline from the margin, counted outward.
 *
 * @param input of the whole stage, outlines straightened
 * @param fold the margin with its sides, or null where it is not known
 * @returns mm, negative where all raw tissue stays inside the margin; or a reason
 * @example measureRawBeyond({ ...input, outlines: { ...input.outlines, raw: null } }, fold).measurement // { notMeasured: 'noRegionFound' }
 */
export function measureRawBeyond(input: MeasureInput, fold: FoldSide | null): Budgeted {
  const { raw, nailFoldMargin: margin } = input.outlines;
  const refusal = regionRefusal(raw, input.grid);
  if (refusal !== null || raw === null) return refused(refusal ?? 'noRegionFound');
  if (fold === null || margin === null) return refused('marginNotFound');
  const edges = regionEdge(raw.rings).map((edge) => edge.filter((point) => fold.outMm(point) !== null));
  const out = edges.map((edge) => edge.map((point) => fold.outMm(point) as number));
  const peak = edgePeak(edges, out, CONTENDER_SPAN * splitBoundary(raw.boundaryUMm).localMm);
  if (peak === null) return refused('marginNotFound');
  return budgeted(input, 'rawBeyondMargin', peak.valueMm, [
    ...scaleTerms(input.scale, Math.abs(peak.valueMm), 'length'),
    skinSlopeTerm(input.scale, Math.abs(peak.valueMm), 'length'),
    ...peakTerms(peak, raw.boundaryUMm, input.scale.pxPerMm),
    { name: 'margin', u: margin.boundaryUMm },
  ]);
}
