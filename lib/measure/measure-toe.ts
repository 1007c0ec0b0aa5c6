import { isMeasured, type Measurement } from '../result';
import { bodyVariants } from './body-variants';
import { refused } from './budgeted';
import type { Budgeted } from './budgeted';
import { checkInput } from './check-input';
import type { CombinedBudget } from './combine-budget';
import { LEAST_FOLD_SEEN, MOST_LEAN_OVER_FOLD_DEG } from './constants';
import { largestRing } from './largest-ring';
import { leanOverFoldDeg } from './lean-over-fold';
import { measureArea } from './measure-area';
import { measureFold } from './measure-fold';
import { measureFoldBulge } from './measure-fold-bulge';
import { measureGroove } from './measure-groove';
import { type MeasureInput, type Measurand, REDNESS_MEASURANDS, SUMMED_REDNESS, type ToeAxis, type ToeMeasurement } from './measure-input';
import { measureProximalReach } from './measure-proximal-reach';
import { measureRawTissue } from './measure-raw-tissue';
import { measureReach } from './measure-reach';
import { measureRedness } from './measure-redness';
import { measureUnrolled } from './measure-unrolled';
import type { Rings } from './region-area';
import { straightenWith } from './straighten-outlines';
import { fitToeCylinder } from './toe-cylinder';
import { CARD_DOWN } from './toe-frame';
import { OVERHEAD } from './toe-relief';

interface KnownAxis {
  readonly axis: ToeAxis;
  readonly from: ToeMeasurement['notes']['toeAxisFrom'];
}

/** The given axis, else the centre line of the toe's outline, else the card's down. */
function axisOf(given: ToeAxis | null, toe: Rings): KnownAxis {
  if (given !== null) return { axis: given, from: 'given' };
  const cylinder = fitToeCylinder(toe, CARD_DOWN);
  if (cylinder === null) return { axis: CARD_DOWN, from: 'cardDown' };
  const length = Math.hypot(cylinder.centreSlope, 1);
  return { axis: { across: cylinder.centreSlope / length, down: 1 / length }, from: 'toeOutline' };
}

/** What is not said of redness because of where the lens stood: all of it where the fold turns away, sums where it leans over from the other side. */
function hiddenRedness({ outlines, lens }: MeasureInput, foldSeen: Measurement, axis: ToeAxis): readonly Measurand[] {
  if (isMeasured(foldSeen) && foldSeen.value < 100 * LEAST_FOLD_SEEN) return REDNESS_MEASURANDS;
  const plate = largestRing(outlines.nailPlate?.rings ?? []);
  const leanDeg = lens && plate && outlines.nailFoldMargin ? leanOverFoldDeg(outlines.nailFoldMargin.line, plate, lens, axis) : null;
  return leanDeg !== null && leanDeg > MOST_LEAN_OVER_FOLD_DEG ? SUMMED_REDNESS : [];
}

/**
 * From outlines in millimetres to measurements with their uncertainty and where it comes from.
 *
 * @param input outlines, map, scale facts and redness planes of one photo
 * @returns every measurand with a value or a reason, never a zero for something not found; for each value its budget
 * @throws RangeError only for input that cannot be what its names say
 * All lengths and areas are projected onto the card's plane, except the two unrolled ones.
 * @example measureToe({ ...input, outlines: { ...input.outlines, cutEdge: null } }).measurements.grooveWidth // { notMeasured: 'plateNotFound' }
 */
export function measureToe(input: MeasureInput): ToeMeasurement {
  checkInput(input);
  const toe = input.outlines.toe?.rings ?? [];
  const known = axisOf(input.toeAxis, toe);
  const cylinder = fitToeCylinder(toe, known.axis);
  const relief = cylinder && { cylinder, lens: input.lens ?? OVERHEAD };
  const outlines = input.lens && relief ? straightenWith(relief, input.outlines) : input.outlines;
  const bodies = relief ? bodyVariants(input.outlines, relief, Boolean(input.lens)) : [];
  const flat: MeasureInput = { ...input, outlines, relief: input.lens ? relief : null, ...(relief && { bodyVariants: bodies }) };
  const { cappedShare, ...unrolled } = measureUnrolled(flat, relief);
  const results: Record<Measurand, Budgeted> = {
    erythemaArea: measureArea(flat, 'erythemaArea', outlines.erythema),
    ...measureReach(flat),
    proximalReach: measureProximalReach(flat, known.axis, known.from),
    ...unrolled,
    // Redness is averaged where the map shows it; the other numbers are taken from the straightened outlines.
    ...measureRedness(input),
    ...measureGroove(flat),
    rawArea: measureArea(flat, 'rawArea', outlines.raw),
    maceratedArea: measureArea(flat, 'maceratedArea', outlines.macerated),
    ...measureRawTissue(flat),
    foldBulge: measureFoldBulge(flat, known.axis),
    ...measureFold(flat),
  };
  const hidden = hiddenRedness(input, results.foldSeenShare.measurement, known.axis);
  const measurements = {} as Record<Measurand, Measurement>;
  const budget: Partial<Record<Measurand, CombinedBudget>> = {};
  for (const key of Object.keys(results) as Measurand[]) {
    const overruled = input.notMeasuredBecause?.[key] ?? (hidden.includes(key) ? 'foldHidden' : null);
    const result = overruled ? refused(overruled) : results[key];
    measurements[key] = result.measurement;
    if (result.budget !== null) budget[key] = result.budget;
  }
  return { measurements, budget, outlines, notes: { toeAxisFrom: known.from, cappedShare } };
}
