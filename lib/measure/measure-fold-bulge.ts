import { median } from 'd3-array';
import type { LineMm } from '../units';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import { CENTRE_LINE_U_MM, HALF_WIDTH_SMOOTHING_MM, KNUCKLE_FROM_MM, KNUCKLE_TO_MM, LEAST_KNUCKLE_SLICES, SLICE_MM } from './constants';
import { largestRing } from './largest-ring';
import { lineThrough } from './line-through';
import type { MeasureInput, ToeAxis } from './measure-input';
import { scaleTerms } from './scale-terms';
import { toToeFrame } from './toe-frame';
import { toeSlices } from './toe-slices';

/**
 * How far the treated fold's outer contour stands out against the untreated side's: the greatest difference of the two half
 * widths along the lateral margin, from a centre line that is found on the toe behind the nail and carried forward.
 *
 * @param input of the whole stage
 * @param axis along the toe
 * @returns mm, negative where the untreated side stands out more; or a reason
 * A leaning camera moves both contours the same way, and the knuckle's with them.
 * @example measureFoldBulge({ ...input, outlines: { ...input.outlines, toe: null } }, CARD_DOWN).measurement // { notMeasured: 'toeNotFound' }
 */
export function measureFoldBulge(input: MeasureInput, axis: ToeAxis): Budgeted {
  const { toe, nailFoldMargin, marginLateral } = input.outlines;
  const ring = largestRing(toe?.rings ?? []);
  if (toe === null || ring === null) return refused('toeNotFound');
  if (nailFoldMargin === null || marginLateral === null || marginLateral.length < 2) return refused('marginNotFound');
  const turned = (line: LineMm): LineMm => line.map((point) => toToeFrame(point, axis));
  const differences = sideDifferencesMm(turned(ring), turned(marginLateral), Math.max(...turned(nailFoldMargin.line).map(({ downMm }) => downMm)));
  if (differences.length === 0) return refused('toeShapeUnknown');
  const half = Math.round(HALF_WIDTH_SMOOTHING_MM / SLICE_MM / 2);
  const bulgeMm = Math.max(...differences.map((_, i) => median(differences.slice(Math.max(0, i - half), i + half + 1)) as number));
  return budgeted(input, 'foldBulge', bulgeMm, [
    ...scaleTerms(input.scale, Math.abs(bulgeMm), 'length'),
    { name: 'toeOutline', u: toe.boundaryUMm, sensitivity: Math.SQRT2 },
    // The centre line errs against both half widths, with opposite signs.
    { name: 'centreLine', u: CENTRE_LINE_U_MM, sensitivity: 2 },
  ]);
}

/** Treated half width less untreated, slice by slice along the lateral margin; all in the toe's frame. */
function sideDifferencesMm(outline: LineMm, lateral: LineMm, nailEndMm: number): number[] {
  const alongs = outline.map(({ downMm }) => downMm);
  const startMm = Math.min(...alongs) + SLICE_MM / 2;
  const slices = toeSlices(outline, startMm, Math.floor((Math.max(...alongs) - startMm) / SLICE_MM))
    .map(({ left, right }, i) => ({ x: startMm + i * SLICE_MM, left, right }))
    .filter(({ right }) => Number.isFinite(right));
  const knuckle = slices.filter(({ x }) => x > nailEndMm + KNUCKLE_FROM_MM && x < nailEndMm + KNUCKLE_TO_MM);
  if (knuckle.length < LEAST_KNUCKLE_SLICES) return [];
  const centre = lineThrough(knuckle.map(({ x, left, right }) => ({ x, y: (left + right) / 2 })));
  const places = lateral.map(({ downMm }) => downMm);
  const [from, to] = [Math.min(...places), Math.max(...places)];
  const onRight = lateral.reduce((sum, { acrossMm, downMm }) => sum + acrossMm - centre(downMm), 0) > 0;
  return slices.filter(({ x }) => x >= from && x <= to).map(({ x, left, right }) => (onRight ? 1 : -1) * (left + right - 2 * centre(x)));
}
