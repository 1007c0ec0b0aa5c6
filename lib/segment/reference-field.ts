import { medianOf } from '../colour/median-of';
import { MAD_TO_SIGMA } from '../rectify/constants';
import { solveLinear } from '../rectify/solve-linear';
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
  const at: number[] = [];
  for (let row = 0; row < grid.heightPx; row += STEP) {
    for (let column = 0; column < grid.widthPx; column += STEP) {
      const i = row * grid.widthPx + column;
      if (reference[i] && Number.isFinite(plane[i])) at.push(i);
    }
  }
  if (at.length < TERMS * 10) return null;
  const rows = at.map((i) => terms(grid, i));
  const values = at.map((i) => plane[i]);
  let weights = at.map(() => 1);
  let scatter = 0;
  let coefficients: number[] | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    coefficients = weightedFit(rows, values, weights);
    if (!coefficients) return null;
    const residuals = rows.map((row, k) => values[k] - dot(row, coefficients as number[]));
    scatter = MAD_TO_SIGMA * medianOf(residuals.map(Math.abs));
    weights = residuals.map((r) => Math.max(0, 1 - (r / (TUKEY * (scatter || 1e-9))) ** 2) ** 2);
  }
  return { field: fieldOf(grid, coefficients as number[]), scatter };
}

/** The fitted quadratic at every pixel. */
function fieldOf(grid: MapGrid, [c0, cx, cy, cxx, cxy, cyy]: readonly number[]): Float32Array {
  const field = new Float32Array(grid.widthPx * grid.heightPx);
  for (let row = 0, i = 0; row < grid.heightPx; row++) {
    const y = (row / grid.heightPx) * 2 - 1;
    for (let column = 0; column < grid.widthPx; column++, i++) {
      const x = (column / grid.widthPx) * 2 - 1;
      field[i] = c0 + cx * x + cy * y + cxx * x * x + cxy * x * y + cyy * y * y;
    }
  }
  return field;
}

/** 1, x, y, x², xy, y² with x, y in half maps from the middle. */
function terms(grid: MapGrid, i: number): number[] {
  const x = ((i % grid.widthPx) / grid.widthPx) * 2 - 1;
  const y = (Math.floor(i / grid.widthPx) / grid.heightPx) * 2 - 1;
  return [1, x, y, x * x, x * y, y * y];
}

function weightedFit(rows: readonly number[][], values: readonly number[], weights: readonly number[]): number[] | null {
  const normal = Array.from({ length: TERMS }, () => new Array<number>(TERMS).fill(0));
  const right = new Array<number>(TERMS).fill(0);
  rows.forEach((row, k) => {
    for (let i = 0; i < TERMS; i++) {
      right[i] += weights[k] * row[i] * values[k];
      for (let j = 0; j < TERMS; j++) normal[i][j] += weights[k] * row[i] * row[j];
    }
  });
  const total = weights.reduce((sum, w) => sum + w, 0);
  RIDGE.forEach((ridge, i) => (normal[i][i] += ridge * total));
  return solveLinear(normal, right);
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < TERMS; i++) sum += a[i] * b[i];
  return sum;
}
