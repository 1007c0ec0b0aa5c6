import type { NotMeasuredReason } from '../result';
import type { Region } from '../segment/segmentation';
import type { LineMm } from '../units';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import type { BudgetTerm } from './combine-budget';
import { CENTRE_LINE_U_MM, CONTENDER_SPAN, EDGE_SPACING_MM, MOST_CAPPED_SHARE, RADIUS_RELATIVE_U } from './constants';
import { distanceToLineMm } from './distance-to-line';
import { edgePeak } from './edge-peak';
import type { EdgePeak } from './edge-peak';
import { holdAtCap } from './hold-at-cap';
import type { MeasureInput } from './measure-input';
import { mapRings } from './map-rings';
import { peakTerms } from './peak-terms';
import { regionAreaMm2 } from './region-area';
import { regionAreaTerms } from './region-area-terms';
import { regionEdge } from './region-edge';
import { regionRefusal } from './region-refusal';
import { resampleLine } from './resample-line';
import { scaleTerms } from './scale-terms';
import { skinSlopeTerm } from './skin-slope-term';
import { splitBoundary } from './split-boundary';
import type { ToeCylinder } from './toe-cylinder';
import { unrollLine } from './unroll-line';
import { unrolledAreaMm2 } from './unrolled-area';

export interface Unrolled {
  readonly unrolledArea: Budgeted;
  readonly unrolledReach: Budgeted;
  readonly cappedShare: number | null;
}

function unrolledPeak(region: Region, margin: LineMm, cylinder: ToeCylinder): EdgePeak | null {
  const edges = regionEdge(region.rings).map((points) => unrollLine(points, cylinder));
  const flatMargin = unrollLine(resampleLine(margin, EDGE_SPACING_MM), cylinder);
  const distances = edges.map((points) => points.map((point) => distanceToLineMm(point, flatMargin)));
  return edgePeak(edges, distances, CONTENDER_SPAN * splitBoundary(region.boundaryUMm).localMm);
}

/** What the cylinder itself leaves open: the number is taken again with a thicker, thinner and shifted one. */
function cylinderTerms(cylinder: ToeCylinder, measure: (other: ToeCylinder) => number): BudgetTerm[] {
  const thicker = (factor: number): ToeCylinder => ({
    ...cylinder,
    halfWidthsMm: cylinder.halfWidthsMm.map((halfWidth) => halfWidth * factor),
  });
  const shifted = (byMm: number): ToeCylinder => ({ ...cylinder, centreMm: cylinder.centreMm + byMm });
  const halfOf = (one: ToeCylinder, other: ToeCylinder): number => Math.abs(measure(one) - measure(other)) / 2;
  return [
    { name: 'cylinderRadius', u: halfOf(thicker(1 + RADIUS_RELATIVE_U), thicker(1 - RADIUS_RELATIVE_U)) },
    { name: 'cylinderCentre', u: halfOf(shifted(CENTRE_LINE_U_MM), shifted(-CENTRE_LINE_U_MM)) },
  ];
}

function reachOnSkin(input: MeasureInput, region: Region, cylinder: ToeCylinder, stretch: number): Budgeted {
  const margin = input.outlines.nailFoldMargin;
  if (margin === null || margin.line.length < 2) return refused('marginNotFound');
  const peak = unrolledPeak(region, margin.line, cylinder);
  if (peak === null) return refused('noRegionFound');
  return budgeted(input, 'unrolledReach', peak.valueMm, [
    ...scaleTerms(input.scale, peak.valueMm, 'length'),
    skinSlopeTerm(input.scale, peak.valueMm, 'length'),
    ...peakTerms(peak, region.boundaryUMm * stretch, input.scale.pxPerMm),
    { name: 'margin', u: margin.boundaryUMm, sensitivity: stretch },
    ...cylinderTerms(cylinder, (other) => unrolledPeak(region, margin.line, other)?.valueMm ?? peak.valueMm),
  ]);
}

/**
 * Area and reach on the skin instead of its projection: what lies on the side of a toe is seen foreshortened.
 *
 * @param input of the whole stage
 * @param cylinder the toe, or null where its outline allowed none
 * @returns mm² and mm or reasons; refuses toeShapeUnknown without a cylinder, and where most of the region lies on skin
 * seen almost edge-on, where the stretch is the cap's and not the toe's
 * The terms of the projected area act on the unrolled one in proportion to the stretch between them.
 * @example measureUnrolled(input, null).unrolledArea.measurement // { notMeasured: 'toeShapeUnknown' }
 */
export function measureUnrolled(input: MeasureInput, cylinder: ToeCylinder | null): Unrolled {
  const region = input.outlines.erythema;
  const both = (reason: NotMeasuredReason, cappedShare: number | null): Unrolled => ({
    unrolledArea: refused(reason),
    unrolledReach: refused(reason),
    cappedShare,
  });
  const refusal = regionRefusal(region, input.grid);
  if (refusal !== null || region === null) return both(refusal ?? 'noRegionFound', null);
  if (cylinder === null) return both('toeShapeUnknown', null);
  const projectedMm2 = regionAreaMm2(region.rings);
  const heldMm2 = regionAreaMm2(mapRings(region.rings, (line) => holdAtCap(line, cylinder)));
  const cappedShare = Math.max(0, 1 - heldMm2 / projectedMm2);
  if (cappedShare > MOST_CAPPED_SHARE) return both('toeShapeUnknown', cappedShare);
  const areaMm2 = unrolledAreaMm2(region.rings, cylinder);
  const stretch = areaMm2 / projectedMm2;
  const unrolledArea = budgeted(input, 'unrolledArea', areaMm2, [
    ...regionAreaTerms(input, 'erythemaArea', region).map((term) => ({
      ...term,
      sensitivity: (term.sensitivity ?? 1) * stretch,
    })),
    ...cylinderTerms(cylinder, (other) => unrolledAreaMm2(region.rings, other)),
  ]);
  return { unrolledArea, unrolledReach: reachOnSkin(input, region, cylinder, stretch), cappedShare };
}
