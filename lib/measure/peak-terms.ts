import type { BudgetTerm } from './combine-budget';
import { BOUNDARY_CORRELATION_MM } from './constants';
import type { EdgePeak } from './edge-peak';
import { largestOfSeveral } from './largest-of-several';
import { splitBoundary } from './split-boundary';
import { uOfHalfWidth } from './u-of-half-width';

/**
 * What the outline's uncertainty does to a greatest distance.
 *
 * A maximum is not an average: nothing cancels along the edge, and of several places that could be the farthest the
 * one with the luckiest error wins, so it comes out too far. How many compete is the contending length over the
 * length that errs together. The upward shift is not taken off, because smoothing in the outline acts the other way
 * and is not known as well; it is carried as a term instead (JCGM 100:2008, F.2.4.5). A tongue narrower than a
 * spike's width adds the doubt whether it is there at all: the truth is anywhere between with and without it.
 *
 * @param peak the peak, from `edgePeak` with contendMm = CONTENDER_SPAN · local part of the boundary's uncertainty
 * @param boundaryUMm of the region's outline, mm
 * @param pxPerMm what the photo resolves
 * @returns terms boundaryCommon, boundaryLocal, peakBias, spike, sampling, mm
 * @example peakTerms({ valueMm: 5, at: { acrossMm: 0, downMm: 0 }, contendersMm: 1, supportedMm: 5 }, 0.3, 12)[2].sensitivity // 0
 */
export function peakTerms(peak: EdgePeak, boundaryUMm: number, pxPerMm: number): BudgetTerm[] {
  const { commonMm, localMm } = splitBoundary(boundaryUMm);
  const largest = largestOfSeveral(Math.max(1, peak.contendersMm / BOUNDARY_CORRELATION_MM));
  return [
    { name: 'boundaryCommon', u: commonMm },
    { name: 'boundaryLocal', u: localMm, sensitivity: largest.sd },
    { name: 'peakBias', u: localMm, sensitivity: largest.mean },
    { name: 'spike', u: uOfHalfWidth((peak.valueMm - peak.supportedMm) / 2, 'rectangular') },
    { name: 'sampling', u: uOfHalfWidth(1 / (2 * pxPerMm), 'rectangular') },
  ];
}
