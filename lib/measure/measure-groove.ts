import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import type { BudgetTerm } from './combine-budget';
import {
  BOUNDARY_CORRELATION_MM,
  CONTENDER_SPAN,
  EDGE_SPACING_MM,
  GROOVE_SHORTEST_LINE_MM,
  GROOVE_STEP_U_MM,
  GROOVE_WIDEST_MM,
  RADIANS_PER_DEGREE,
  RANDOM_AZIMUTH_RMS,
} from './constants';
import { grooveGapsMm } from './groove-gaps';
import { largestOfSeveral } from './largest-of-several';
import { lineLengthMm } from './line-length';
import type { MeasureInput } from './measure-input';
import { scaleTerms } from './scale-terms';
import { splitBoundary } from './split-boundary';

/** What acts on every gap alike. */
function commonTerms(input: MeasureInput, widthMm: number, marginMm: number, cutEdgeMm: number): BudgetTerm[] {
  const lean = Math.tan(input.scale.tiltDeg * RADIANS_PER_DEGREE) * RANDOM_AZIMUTH_RMS;
  return [
    ...scaleTerms(input.scale, widthMm, 'length'),
    { name: 'grooveStep', u: GROOVE_STEP_U_MM, sensitivity: lean },
    { name: 'marginCommon', u: marginMm },
    { name: 'cutEdgeCommon', u: cutEdgeMm },
  ];
}

/**
 * Groove width, mean and largest: the gap between the plate's cut edge and the nail-fold margin.
 *
 * @param input of the whole stage; the lateral margin is as uncertain as the margin it is part of
 * @returns both in mm or a reason; lines too short, or a gap no groove has, are weak evidence and not a width
 * Wobble along the two lines averages out in the mean and does not in the largest (see `peakTerms`).
 * @example measureGroove({ ...input, outlines: { ...input.outlines, cutEdge: null } }).grooveWidth.measurement // { notMeasured: 'plateNotFound' }
 */
export function measureGroove(input: MeasureInput): { readonly grooveWidth: Budgeted; readonly grooveWidthMax: Budgeted } {
  const { marginLateral, nailFoldMargin, cutEdge } = input.outlines;
  const both = (result: Budgeted) => ({ grooveWidth: result, grooveWidthMax: result });
  if (marginLateral === null || nailFoldMargin === null) return both(refused('marginNotFound'));
  if (cutEdge === null) return both(refused('plateNotFound'));
  const lengthMm = lineLengthMm(marginLateral);
  const shortest = Math.min(lengthMm, lineLengthMm(cutEdge.line));
  if (shortest < GROOVE_SHORTEST_LINE_MM) return both(refused('evidenceTooWeak'));
  const gaps = grooveGapsMm(marginLateral, cutEdge.line);
  const meanMm = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const largestMm = Math.max(...gaps);
  if (largestMm > GROOVE_WIDEST_MM) return both(refused('evidenceTooWeak'));

  const margin = splitBoundary(nailFoldMargin.boundaryUMm);
  const edge = splitBoundary(cutEdge.boundaryUMm);
  const localMm = Math.hypot(margin.localMm, edge.localMm);
  const averaging = Math.sqrt(Math.min(1, BOUNDARY_CORRELATION_MM / lengthMm));
  const contendersMm = gaps.filter((gap) => gap >= largestMm - CONTENDER_SPAN * localMm).length * EDGE_SPACING_MM;
  const largest = largestOfSeveral(Math.max(1, contendersMm / BOUNDARY_CORRELATION_MM));
  return {
    grooveWidth: budgeted(input, 'grooveWidth', meanMm, [
      ...commonTerms(input, meanMm, margin.commonMm, edge.commonMm),
      { name: 'linesLocal', u: localMm, sensitivity: averaging },
    ]),
    grooveWidthMax: budgeted(input, 'grooveWidthMax', largestMm, [
      ...commonTerms(input, largestMm, margin.commonMm, edge.commonMm),
      { name: 'linesLocal', u: localMm, sensitivity: largest.sd },
      { name: 'peakBias', u: localMm, sensitivity: largest.mean },
    ]),
  };
}
