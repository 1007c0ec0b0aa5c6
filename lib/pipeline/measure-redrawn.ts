import { type Measurand, type MeasureInput, type Outlines, REDNESS_MEASURANDS, type ToeMeasurement } from '../measure/measure-input';
import { measureToe } from '../measure/measure-toe';
import type { DrawnOutline } from '../segment/edge-cost';
import type { Region } from '../segment/segmentation';
import type { LineMm } from '../units';
import { marginParts } from './margin-parts';

/** Outlines that a person has drawn, as the camera shows them; what is not named stays as the program found it. */
export type DrawnLines = Readonly<Partial<Record<DrawnOutline, LineMm>>>;

/**
 * Where a hand-drawn line may lie, one standard deviation, clicks 0.5 mm off included: as found on own phantoms with 4
 * clicks for the margin, 16 around redness and around a raw area (root mean square 0.22, 0.31 and 0.24 mm), rounded up.
 */
const DRAWN_U_MM: Readonly<Record<DrawnOutline, number>> = { nailFoldMargin: 0.25, erythema: 0.4, raw: 0.3 };

/** Experts who trace the same picture of a fuzzy border differ in area by 6–11 % (published anchor of the measurement page). */
const TRACING = { relative: 0.085, absolute: 0 };

/** What each outline decides: there the tissue model's own error no longer counts, a person's does. */
const DECIDES: Readonly<Record<DrawnOutline, readonly Measurand[]>> = {
  erythema: REDNESS_MEASURANDS,
  nailFoldMargin: ['grooveWidth', 'grooveWidthMax'],
  raw: ['rawArea', 'rawBeyondMargin'],
};
const TRACED_AREAS: readonly Measurand[] = ['erythemaArea', 'unrolledArea', 'rednessLoad', 'rawArea'];

/**
 * Measures a photo again with outlines that a person has drawn. What the picture alone could not support, a person's
 * line may: its numbers are given, with the uncertainty of a drawn line. How red it is inside still comes from the index.
 *
 * @param input what the program measured with
 * @param drawn lines as drawn, mm; areas closed, the margin from either end
 * @returns every measurand with a value or a reason, and the straightened outlines
 * @example measureRedrawn(map.input, {}).measurements.erythemaArea // as the program measured it
 */
export function measureRedrawn(input: MeasureInput, drawn: DrawnLines): ToeMeasurement {
  const names = Object.keys(drawn) as DrawnOutline[];
  const decided = names.flatMap((name) => DECIDES[name]);
  const without = <Value>(record: Partial<Record<Measurand, Value>> = {}) => Object.fromEntries(Object.entries(record).filter(([key]) => !decided.includes(key as Measurand)));
  return measureToe({
    ...input,
    outlines: withDrawn(input.outlines, drawn),
    modelError: without(input.modelError),
    notMeasuredBecause: without(input.notMeasuredBecause),
    tracing: Object.fromEntries(decided.filter((key) => TRACED_AREAS.includes(key)).map((key) => [key, TRACING])),
  });
}

/**
 * Outlines as the camera shows them, the drawn ones in the place of those that were found.
 *
 * @param found by the program
 * @param drawn by a person
 * @example withDrawn(found, {}) // found
 */
export function withDrawn(found: Outlines, { erythema, nailFoldMargin, raw }: DrawnLines): Outlines {
  return {
    ...found,
    ...(erythema && { erythema: regionOf(erythema, 'erythema') }),
    ...(raw && { raw: regionOf(raw, 'raw') }),
    ...(nailFoldMargin && marginParts(found, nailFoldMargin, { boundaryUMm: DRAWN_U_MM.nailFoldMargin, confidence: 1, origin: 'confirmed' })),
  };
}

const regionOf = (ring: LineMm, name: DrawnOutline): Region => ({ rings: [{ ring, hole: false }], confidence: 1, boundaryUMm: DRAWN_U_MM[name] });
