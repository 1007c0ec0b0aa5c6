import type { PointMm } from '../units';
import type { Prior, RidgeRow } from './robust-ridge';
import { fitRobustRidge } from './robust-ridge';

/** A smooth field over the card: c0 + c1·s + c2·t + c3·s² + c4·s·t + c5·t², s and t −1…1 over the samples. */
export interface QuadraticField {
  readonly centre: PointMm;
  readonly halfSpan: PointMm;
  readonly coefficients: readonly number[];
}

export interface FieldSample {
  readonly at: PointMm;
  readonly value: number;
}

const middleAndHalf = (values: readonly number[]): readonly [number, number] => {
  const low = Math.min(...values);
  const high = Math.max(...values);
  return [(low + high) / 2, Math.max((high - low) / 2, 1)];
};

function basisAt(point: PointMm, centre: PointMm, halfSpan: PointMm): number[] {
  const s = (point.acrossMm - centre.acrossMm) / halfSpan.acrossMm;
  const t = (point.downMm - centre.downMm) / halfSpan.downMm;
  return [1, s, t, s * s, s * t, t * t];
}

/**
 * Fits a smooth field to samples on the card; samples on ink, under a finger or beyond a shadow's edge lose their weight.
 * @param samples at least one; in any unit
 * @param sigma expected scatter of one sample about a smooth field
 * @param bendSd how strongly slopes and curvatures are expected to differ from zero, same unit
 * @returns the field, and per sample value − field
 * @example fitQuadraticField([{ at: { acrossMm: 0, downMm: 0 }, value: 0 }], 1, 1).residuals[0] // 0
 */
export function fitQuadraticField(
  samples: readonly FieldSample[],
  sigma: number,
  bendSd: number,
): { field: QuadraticField; residuals: readonly number[] } {
  if (samples.length === 0) throw new RangeError('fitQuadraticField: at least one sample is needed, received 0');
  const [acrossMm, halfAcrossMm] = middleAndHalf(samples.map(({ at }) => at.acrossMm));
  const [downMm, halfDownMm] = middleAndHalf(samples.map(({ at }) => at.downMm));
  const centre = { acrossMm, downMm };
  const halfSpan = { acrossMm: halfAcrossMm, downMm: halfDownMm };
  const rows: RidgeRow[] = samples.map(({ at, value }) => ({ basis: basisAt(at, centre, halfSpan), target: value, sigma }));
  const free: Prior = { mean: 0, sd: 1e6 * sigma };
  const bend: Prior = { mean: 0, sd: bendSd };
  const { parameters, residuals } = fitRobustRidge(rows, [free, bend, bend, bend, bend, bend]);
  return { field: { centre, halfSpan, coefficients: parameters }, residuals };
}

/**
 * The field's value at one point of the card.
 * @param field a fitted field
 * @param point card position, mm; the fit is trustworthy between the samples, not far outside
 * @returns the value, in the unit of the samples
 * @example fieldAt({ centre, halfSpan, coefficients: [2, 0, 0, 0, 0, 0] }, { acrossMm: 1, downMm: 0 }) // 2
 */
export function fieldAt(field: QuadraticField, point: PointMm): number {
  return basisAt(point, field.centre, field.halfSpan).reduce((sum, value, k) => sum + value * field.coefficients[k], 0);
}
