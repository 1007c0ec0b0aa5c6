import { medianOf } from '../rectify/median-of';
import { MAD_TO_SIGMA } from '../rectify/constants';
import { solveLinear } from '../rectify/solve-linear';
import { FIELD_HALF_SPAN_MM } from './constants';
import type { MapGrid } from '../rectify/millimetre-map';

/** A smooth field over the toe fitted to its reference skin. */
export interface ReferenceField {
  readonly field: Float32Array;
  /** Robust standard deviation of the reference skin about the field. */
  readonly scatter: number;
}

const TERMS = 6;
const ROUNDS = 4;
/** Tukey's bisquare, 95 % efficiency. */
const TUKEY = 4.685;
/** Every fourth pixel each way: neighbours say the same thing. */
const STEP = 4;
/** Bends are held back, so that the field stays tame where no reference skin lies. */
const RIDGE = [0, 0.002, 0.002, 0.02, 0.02, 0.02] as const;

/**
 * Fits a quadratic field of the map's position to the values of reference skin, robustly (iterated bisquare).
 *
 * The square in "across" lets both sides of the toe be redder than its back, as they are in people; the treated side is
 * thereby judged by the untreated one, mirrored, without having to find the mirror line.
 *
 * @param grid the map
 * @param plane values, e.g. the erythema index
 * @param reference not 0 = reference skin
 * @returns the field over the whole map, or null when there is too little skin to fix it
 * @example fitReferenceField(grid, ei, reference)?.field[0]
 */
export function fitReferenceField(grid: MapGrid, plane: Float32Array, reference: Uint8Array): ReferenceField | null {
  const { basis, values } = samplesOf(grid, plane, reference);
  if (values.length < TERMS * 10) return null;
  const weights = new Float64Array(values.length).fill(1);
  const sizes = new Float64Array(values.length);
  let scatter = 0;
  let coefficients: number[] | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    coefficients = weightedFit(basis, values, weights);
    if (!coefficients) return null;
    for (let k = 0; k < values.length; k++) sizes[k] = Math.abs(values[k] - dot(basis, k, coefficients));
    scatter = MAD_TO_SIGMA * medianOf(sizes);
    const cut = TUKEY * (scatter || 1e-9);
    for (let k = 0; k < values.length; k++) weights[k] = Math.max(0, 1 - (sizes[k] / cut) ** 2) ** 2;
  }
  return { field: fieldOf(grid, coefficients as number[]), scatter };
}

/** Reference skin on a coarse lattice: the terms of each place in one flat row after the other, and its value. */
function samplesOf(grid: MapGrid, plane: Float32Array, reference: Uint8Array): { basis: Float64Array; values: Float64Array } {
  const most = Math.ceil(grid.heightPx / STEP) * Math.ceil(grid.widthPx / STEP);
  const basis = new Float64Array(most * TERMS);
  const values = new Float64Array(most);
  let n = 0;
  for (let row = 0; row < grid.heightPx; row += STEP) {
    const y = placeDown(grid, row);
    for (let column = 0; column < grid.widthPx; column += STEP) {
      const i = row * grid.widthPx + column;
      if (!reference[i] || !Number.isFinite(plane[i])) continue;
      const x = placeAcross(grid, column);
      basis.set([1, x, y, x * x, x * y, y * y], n * TERMS);
      values[n++] = plane[i];
    }
  }
  return { basis: basis.subarray(0, n * TERMS), values: values.subarray(0, n) };
}

/** The fitted quadratic at every pixel. */
function fieldOf(grid: MapGrid, [c0, cx, cy, cxx, cxy, cyy]: readonly number[]): Float32Array {
  const field = new Float32Array(grid.widthPx * grid.heightPx);
  for (let row = 0, i = 0; row < grid.heightPx; row++) {
    const y = placeDown(grid, row);
    for (let column = 0; column < grid.widthPx; column++, i++) {
      const x = placeAcross(grid, column);
      field[i] = c0 + cx * x + cy * y + cxx * x * x + cxy * x * y + cyy * y * y;
    }
  }
  return field;
}

/** Place from the middle of the map, in halves of a whole map. */
const placeAcross = (grid: MapGrid, column: number) => (column - grid.widthPx / 2) / grid.pxPerMm / FIELD_HALF_SPAN_MM.across;
const placeDown = (grid: MapGrid, row: number) => (row - grid.heightPx / 2) / grid.pxPerMm / FIELD_HALF_SPAN_MM.down;

function weightedFit(basis: Float64Array, values: Float64Array, weights: Float64Array): number[] | null {
  const normal = Array.from({ length: TERMS }, () => new Array<number>(TERMS).fill(0));
  const right = new Array<number>(TERMS).fill(0);
  let total = 0;
  for (let k = 0; k < values.length; k++) {
    if (weights[k] === 0) continue;
    total += weights[k];
    for (let i = 0; i < TERMS; i++) {
      const share = weights[k] * basis[k * TERMS + i];
      right[i] += share * values[k];
      for (let j = 0; j <= i; j++) normal[i][j] += share * basis[k * TERMS + j];
    }
  }
  for (let i = 0; i < TERMS; i++) for (let j = 0; j < i; j++) normal[j][i] = normal[i][j];
  RIDGE.forEach((ridge, i) => (normal[i][i] += ridge * total));
  return solveLinear(normal, right);
}

function dot(basis: Float64Array, k: number, coefficients: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < TERMS; i++) sum += basis[k * TERMS + i] * coefficients[i];
  return sum;
}
