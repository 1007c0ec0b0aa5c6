import { max } from 'd3-array';
import type { PointMm } from '../units';
import { bodyTerms } from './body-variants';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import { AXIS_U_DEG, CONTENDER_SPAN, RADIANS_PER_DEGREE } from './constants';
import { edgePeak } from './edge-peak';
import type { MeasureInput, Outlines, ToeAxis, ToeMeasurement } from './measure-input';
import { peakTerms } from './peak-terms';
import { regionEdge } from './region-edge';
import { regionRefusal } from './region-refusal';
import { scaleTerms } from './scale-terms';
import { splitBoundary } from './split-boundary';
import { toToeFrame } from './toe-frame';

/**
 * How far the region extends toward the ankle beyond the most proximal point of the margin, along the toe's axis.
 *
 * @param input of the whole stage
 * @param axis the toe's axis in the card's plane
 * @param axisFrom where the axis comes from, which fixes how well it is known
 * @returns mm or a reason. 0 is a measured value here: a region was found and ends at or before that point
 * A wrong axis moves the result by the sideways distance of the two points times the error in radians.
 * @example measureProximalReach({ ...input, outlines: { ...input.outlines, erythema: null } }, { across: 0, down: 1 }, 'cardDown').measurement // { notMeasured: 'noRegionFound' }
 */
export function measureProximalReach(
  input: MeasureInput,
  axis: ToeAxis,
  axisFrom: ToeMeasurement['notes']['toeAxisFrom'],
): Budgeted {
  const { erythema, nailFoldMargin } = input.outlines;
  const refusal = regionRefusal(erythema, input.grid);
  if (refusal !== null || erythema === null) return refused(refusal ?? 'noRegionFound');
  if (nailFoldMargin === null || nailFoldMargin.line.length < 2) return refused('marginNotFound');

  const edges = regionEdge(erythema.rings).map((points) => points.map((point) => toToeFrame(point, axis)));
  const heights = edges.map((points) => points.map(({ downMm }) => downMm));
  const peak = edgePeak(edges, heights, CONTENDER_SPAN * splitBoundary(erythema.boundaryUMm).localMm);
  if (peak === null) return refused('noRegionFound');
  const margin = nailFoldMargin.line.map((point) => toToeFrame(point, axis));
  const start = margin.reduce((most, point) => (point.downMm > most.downMm ? point : most));
  const reachMm = Math.max(0, peak.valueMm - start.downMm);
  return budgeted(input, 'proximalReach', reachMm, [
    ...scaleTerms(input.scale, reachMm, 'length'),
    ...bodyTerms(input, reachMm, 'length', ({ outlines }) => reachAlong(outlines, axis)),
    ...peakTerms(peak, erythema.boundaryUMm, input.scale.pxPerMm),
    { name: 'margin', u: nailFoldMargin.boundaryUMm },
    {
      name: 'toeAxis',
      u: AXIS_U_DEG[axisFrom] * RADIANS_PER_DEGREE,
      sensitivity: peak.at.acrossMm - start.acrossMm,
    },
  ]);
}

function reachAlong({ erythema, nailFoldMargin }: Outlines, axis: ToeAxis): number | null {
  const along = (point: PointMm): number => toToeFrame(point, axis).downMm;
  const farthest = max(erythema?.rings.flatMap(({ ring }) => ring.map(along)) ?? []);
  const start = max(nailFoldMargin?.line.map(along) ?? []);
  return farthest === undefined || start === undefined ? null : Math.max(0, farthest - start);
}
