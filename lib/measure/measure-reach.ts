import { max, quantile } from 'd3-array';
import { bodyTerms } from './body-variants';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import { CONTENDER_SPAN, EDGE_SPACING_MM, NEAR_MARGIN_MM, REACH_PERCENTILE, VARIANT_SPACING_MM } from './constants';
import { distanceToLineMm } from './distance-to-line';
import { edgePeak } from './edge-peak';
import { flankAveraging } from './flank-averaging';
import type { MeasureInput, Outlines } from './measure-input';
import { peakTerms } from './peak-terms';
import { regionEdge } from './region-edge';
import { regionRefusal } from './region-refusal';
import { scaleTerms } from './scale-terms';
import { sightStretch } from './sight-stretch';
import { splitBoundary } from './split-boundary';

/**
 * Reach: the greatest distance from the region's edge to the nail-fold margin (directed Hausdorff distance), and the
 * 95th percentile of that distance over the edge, without the part that leans on the margin.
 *
 * @param input of the whole stage
 * @returns both in mm or a reason; reachP95 also refuses where the whole edge lies within 0.25 mm of the margin
 * The percentile interpolates between order statistics (Hyndman and Fan 1996, definition 7, as d3-array has it).
 * For the uncertainty of a maximum see `peakTerms`; the percentile has no peak to be biased by (`flankAveraging`).
 * @example measureReach({ ...input, outlines: { ...input.outlines, erythema: null } }).reach.measurement // { notMeasured: 'noRegionFound' }
 */
export function measureReach(input: MeasureInput): { readonly reach: Budgeted; readonly reachP95: Budgeted } {
  const { erythema, nailFoldMargin } = input.outlines;
  const both = (result: Budgeted) => ({ reach: result, reachP95: result });
  const refusal = regionRefusal(erythema, input.grid);
  if (refusal !== null || erythema === null) return both(refused(refusal ?? 'noRegionFound'));
  if (nailFoldMargin === null || nailFoldMargin.line.length < 2) return both(refused('marginNotFound'));

  const { commonMm, localMm } = splitBoundary(erythema.boundaryUMm);
  const edges = regionEdge(erythema.rings);
  const distances = distancesOver(input.outlines);
  const peak = edgePeak(edges, distances, CONTENDER_SPAN * localMm);
  if (peak === null) return both(refused('noRegionFound'));
  const margin = { name: 'margin', u: nailFoldMargin.boundaryUMm };
  const stretch = input.relief ? Math.max(1, sightStretch(input.relief, peak.at)) : 1;
  const overOthers = new Map(input.bodyVariants?.map((variant) => [variant, distancesOver(variant.outlines, VARIANT_SPACING_MM).flat()]));
  const reach = budgeted(input, 'reach', peak.valueMm, [
    ...scaleTerms(input.scale, peak.valueMm, 'length'),
    ...bodyTerms(input, peak.valueMm, 'length', (variant) => max(overOthers.get(variant) ?? []) ?? null),
    ...peakTerms(peak, erythema.boundaryUMm * stretch, input.scale.pxPerMm),
    margin,
  ]);

  const away = distances.flat().filter((distance) => distance > NEAR_MARGIN_MM);
  if (away.length === 0) return { reach, reachP95: refused('evidenceTooWeak') };
  const p95 = quantile(away, REACH_PERCENTILE) as number;
  const frontMm = (1 - REACH_PERCENTILE) * away.length * EDGE_SPACING_MM;
  const reachP95 = budgeted(input, 'reachP95', p95, [
    ...scaleTerms(input.scale, p95, 'length'),
    ...bodyTerms(input, p95, 'length', (variant) => quantile((overOthers.get(variant) ?? []).filter((mm) => mm > NEAR_MARGIN_MM), REACH_PERCENTILE) ?? null),
    { name: 'boundaryCommon', u: commonMm, sensitivity: stretch },
    { name: 'boundaryLocal', u: localMm, sensitivity: stretch * flankAveraging(frontMm) },
    margin,
  ]);
  return { reach, reachP95 };
}

/** Distances of the region's edge from the margin, one list for each ring, mm. */
function distancesOver({ erythema, nailFoldMargin }: Outlines, spacingMm?: number): number[][] {
  if (erythema === null || nailFoldMargin === null) return [];
  return regionEdge(erythema.rings, spacingMm).map((points) => points.map((point) => distanceToLineMm(point, nailFoldMargin.line)));
}
