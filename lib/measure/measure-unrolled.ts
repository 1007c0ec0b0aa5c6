import { isMeasured, type NotMeasuredReason } from '../result';
import type { Region } from '../segment/segmentation';
import type { LineMm } from '../units';
import { type BodyVariant, variantTerms } from './body-variants';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import { CONTENDER_SPAN, EDGE_SPACING_MM, MOST_CAPPED_SHARE, MOST_UNROLLED_REACH_U_MM, VARIANT_SPACING_MM } from './constants';
import { distanceToLineMm } from './distance-to-line';
import { edgePeak } from './edge-peak';
import type { EdgePeak } from './edge-peak';
import type { MeasureInput } from './measure-input';
import { mapRings } from './map-rings';
import { peakTerms } from './peak-terms';
import { regionAreaMm2 } from './region-area';
import { regionAreaTerms } from './region-area-terms';
import { regionEdge } from './region-edge';
import { regionRefusal } from './region-refusal';
import { resampleLine } from './resample-line';
import { scaleTerms } from './scale-terms';
import { splitBoundary } from './split-boundary';
import type { ToeRelief } from './toe-relief';
import { holdAtCap, unrollLine } from './unroll-line';
import { unrolledAreaMm2 } from './unrolled-area';

export interface Unrolled {
  readonly unrolledArea: Budgeted;
  readonly unrolledReach: Budgeted;
  readonly cappedShare: number | null;
}

function unrolledPeak(region: Region, margin: LineMm, relief: ToeRelief, spacingMm = EDGE_SPACING_MM): EdgePeak | null {
  const edges = regionEdge(region.rings, spacingMm).map((points) => unrollLine(points, relief));
  const flatMargin = unrollLine(resampleLine(margin, spacingMm), relief);
  const distances = edges.map((points) => points.map((point) => distanceToLineMm(point, flatMargin)));
  return edgePeak(edges, distances, CONTENDER_SPAN * splitBoundary(region.boundaryUMm).localMm);
}

function reachOnSkin(input: MeasureInput, region: Region, relief: ToeRelief, stretch: number): Budgeted {
  const margin = input.outlines.nailFoldMargin;
  if (margin === null || margin.line.length < 2) return refused('marginNotFound');
  const peak = unrolledPeak(region, margin.line, relief);
  if (peak === null) return refused('noRegionFound');
  const overOther = ({ outlines, relief: other }: BodyVariant): number | null =>
    outlines.erythema && outlines.nailFoldMargin && (unrolledPeak(outlines.erythema, outlines.nailFoldMargin.line, other, VARIANT_SPACING_MM)?.valueMm ?? null);
  const reach = budgeted(input, 'unrolledReach', peak.valueMm, [
    ...scaleTerms(input.scale, peak.valueMm, 'length'),
    ...peakTerms(peak, region.boundaryUMm * stretch, input.scale.pxPerMm),
    { name: 'margin', u: margin.boundaryUMm, sensitivity: stretch },
    ...variantTerms(input, peak.valueMm, overOther),
  ]);
  return isMeasured(reach.measurement) && reach.measurement.U > MOST_UNROLLED_REACH_U_MM ? refused('toeShapeUnknown') : reach;
}

/**
 * Area and reach on the skin instead of its projection: what lies on the side of a toe is seen foreshortened.
 *
 * @param input of the whole stage
 * @param relief the toe's body and the lens, or null where its outline allowed none
 * @returns mm² and mm or reasons; refuses toeShapeUnknown without a cylinder, and where most of the region lies on skin
 * seen almost edge-on, where the stretch is the cap's and not the toe's; and a reach that is not known to 2 mm, for the
 * projected one tells more then
 * The terms of the projected area act on the unrolled one in proportion to the stretch between them.
 * @example measureUnrolled(input, null).unrolledArea.measurement // { notMeasured: 'toeShapeUnknown' }
 */
export function measureUnrolled(input: MeasureInput, relief: ToeRelief | null): Unrolled {
  const region = input.outlines.erythema;
  const both = (reason: NotMeasuredReason, cappedShare: number | null): Unrolled => ({
    unrolledArea: refused(reason),
    unrolledReach: refused(reason),
    cappedShare,
  });
  const refusal = regionRefusal(region, input.grid);
  if (refusal !== null || region === null) return both(refusal ?? 'noRegionFound', null);
  if (relief === null) return both('toeShapeUnknown', null);
  const projectedMm2 = regionAreaMm2(region.rings);
  const heldMm2 = regionAreaMm2(mapRings(region.rings, (line) => holdAtCap(line, relief)));
  const cappedShare = Math.max(0, 1 - heldMm2 / projectedMm2);
  if (cappedShare > MOST_CAPPED_SHARE) return both('toeShapeUnknown', cappedShare);
  const areaMm2 = unrolledAreaMm2(region.rings, relief);
  const stretch = areaMm2 / projectedMm2;
  const unrolledArea = budgeted(input, 'unrolledArea', areaMm2, [
    ...regionAreaTerms(input, 'erythemaArea', region).map((term) => ({
      ...term,
      sensitivity: (term.sensitivity ?? 1) * stretch,
    })),
    ...variantTerms(input, areaMm2, ({ outlines, relief: other }) => unrolledAreaMm2(outlines.erythema?.rings ?? [], other)),
  ]);
  return { unrolledArea, unrolledReach: reachOnSkin(input, region, relief, stretch), cappedShare };
}
