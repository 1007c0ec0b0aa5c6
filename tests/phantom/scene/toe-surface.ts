/**
 * The toe's surface as a table over (row: along the toe, finer toward the tip; column: angle round it), with the two ways
 * to use it: a place on the skin → a point in space, and a ray → the place where it meets the skin.
 */
import type { PhantomSpec } from '../phantom-spec';
import { nailUnit, type NailUnit, type SkinPoint } from './nail-unit';
import { limit } from './smooth';
import { toeBody, type ToeBody } from './toe-body';
import { toeRelief } from './toe-relief';

export const LONGEST_MM = 50;
/** Half of the angle that the table covers; the underside is never seen. */
export const TURN_LIMIT_RAD = 1.8;
const TIP_STRETCH_MM = 4;

/** Row coordinate in mm: like the arc over the tip, then like the length. */
export const stretch = (alongMm: number): number =>
  (alongMm + Math.sqrt(alongMm * alongMm + 4 * TIP_STRETCH_MM * alongMm)) / 2;
const unstretch = (rowMm: number): number => (rowMm * rowMm) / (rowMm + TIP_STRETCH_MM);

export interface ToeSurface {
  readonly rows: number;
  readonly columns: number;
  readonly rowStepMm: number;
  readonly turnStepRad: number;
  readonly alongMm: Float64Array;
  readonly radiusMm: Float32Array;
  /** Place of each texel on the unrolled skin, from the middle line. */
  readonly acrossMm: Float32Array;
  /** Unit normals, three numbers per texel, in the toe's frame (aside, along, up). */
  readonly normals: Float32Array;
  readonly axisAsideMm: Float32Array;
  /** How much a step along a ray has to be shortened in each row, because the surface is steep there. */
  readonly steepness: Float32Array;
  readonly body: ToeBody;
  readonly nail: NailUnit;
  /** The highest point of the table above the axis. */
  readonly highestMm: number;
}

/** Places along the skin of one section, from its middle. */
function unroll(section: Float64Array, turnStepRad: number): Float64Array {
  const columns = section.length;
  const across = new Float64Array(columns);
  for (let column = (columns + 1) / 2; column < columns; column++) {
    const rise = section[column] - section[column - 1];
    const run = ((section[column - 1] + section[column]) / 2) * turnStepRad;
    across[column] = across[column - 1] + Math.sqrt(rise * rise + run * run);
    across[columns - 1 - column] = -across[column];
  }
  return across;
}

function normalsOf(surface: Omit<ToeSurface, 'normals'>): Float32Array {
  const { rows, columns, radiusMm, alongMm, axisAsideMm, turnStepRad } = surface;
  const normals = new Float32Array(rows * columns * 3);
  const middle = (columns - 1) / 2;
  const sine = Float64Array.from({ length: columns }, (_, c) => Math.sin((c - middle) * turnStepRad));
  const cosine = Float64Array.from({ length: columns }, (_, c) => Math.cos((c - middle) * turnStepRad));
  for (let r = 0; r < rows; r++) {
    const before = Math.max(0, r - 1);
    const after = Math.min(rows - 1, r + 1);
    for (let c = 0; c < columns; c++) {
      const left = Math.max(0, c - 1);
      const right = Math.min(columns - 1, c + 1);
      const here = r * columns;
      const ra = radiusMm[before * columns + c], rb = radiusMm[after * columns + c];
      const ux = rb * sine[c] + axisAsideMm[after] - ra * sine[c] - axisAsideMm[before];
      const uy = alongMm[after] - alongMm[before];
      const uz = (rb - ra) * cosine[c];
      const rl = radiusMm[here + left], rr = radiusMm[here + right];
      const vx = rr * sine[right] - rl * sine[left];
      const vz = rr * cosine[right] - rl * cosine[left];
      // Across × along points outward.
      const nx = -vz * uy, ny = vz * ux - vx * uz, nz = vx * uy;
      const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
      normals[(here + c) * 3] = nx / length;
      normals[(here + c) * 3 + 1] = ny / length;
      normals[(here + c) * 3 + 2] = nz / length;
    }
  }
  return normals;
}

/** Builds the table; `texelMm` is its grain on the skin. */
export function toeSurface(spec: Pick<PhantomSpec, 'toe' | 'wound'>, texelMm: number): ToeSurface {
  const rows = Math.ceil(stretch(LONGEST_MM) / texelMm) + 1;
  const rowStepMm = stretch(LONGEST_MM) / (rows - 1);
  const columns = 2 * Math.ceil((TURN_LIMIT_RAD * spec.toe.halfWidthMm) / texelMm) + 1;
  const turnStepRad = (2 * TURN_LIMIT_RAD) / (columns - 1);
  const turnsRad = Float64Array.from({ length: columns }, (_, c) => (c - (columns - 1) / 2) * turnStepRad);
  const body = toeBody(spec.toe, turnsRad);
  const nail = nailUnit(spec.toe, spec.wound);
  const relief = toeRelief(spec.toe, spec.wound, body, nail);
  const alongMm = Float64Array.from({ length: rows }, (_, r) => unstretch(Math.max(r, 0.3) * rowStepMm));
  const radiusMm = new Float32Array(rows * columns);
  const acrossMm = new Float32Array(rows * columns);
  const axisAsideMm = Float32Array.from(alongMm, (along) => body.axisAsideMm(along));
  let highestMm = 0;
  for (let r = 0; r < rows; r++) {
    const section = body.sectionMm(alongMm[r]);
    const across = unroll(section, turnStepRad);
    for (let c = 0; c < columns; c++) {
      const turn = turnsRad[c];
      const radius = Math.max(0.02, relief(section[c], alongMm[r], turn, across[c]));
      radiusMm[r * columns + c] = radius;
      acrossMm[r * columns + c] = across[c];
      highestMm = Math.max(highestMm, radius * Math.cos(turn));
    }
  }
  const steepness = Float32Array.from(alongMm, (along) => {
    const slope = (body.halfWidthMm(along + 0.05) - body.halfWidthMm(Math.max(0.001, along - 0.05))) / 0.1;
    return 0.9 / Math.hypot(1, slope);
  });
  const bare = { rows, columns, rowStepMm, turnStepRad, alongMm, radiusMm, acrossMm, axisAsideMm, steepness, body, nail, highestMm };
  return { ...bare, normals: normalsOf(bare) };
}

/** Column of the table at which a row reaches this place across the skin. */
function columnAt(surface: ToeSurface, row: number, acrossMm: number): number {
  const { columns } = surface;
  const start = row * columns;
  let low = 0;
  let high = columns - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (surface.acrossMm[start + middle] <= acrossMm) low = middle;
    else high = middle;
  }
  const from = surface.acrossMm[start + low];
  const to = surface.acrossMm[start + high];
  return low + limit((acrossMm - from) / (to - from || 1), 0, 1);
}

/** The point in the toe's frame (aside, along, up) of a place on the unrolled skin. */
export function skinToToe(surface: ToeSurface, { alongMm, acrossMm }: SkinPoint): [number, number, number] {
  const row = limit(stretch(Math.max(0, alongMm)) / surface.rowStepMm, 0, surface.rows - 1.001);
  const low = Math.floor(row);
  const share = row - low;
  const at = (r: number): [number, number, number] => {
    const column = columnAt(surface, r, acrossMm);
    const c = Math.min(surface.columns - 2, Math.floor(column));
    const f = column - c;
    const radius = surface.radiusMm[r * surface.columns + c] * (1 - f) + surface.radiusMm[r * surface.columns + c + 1] * f;
    const turn = (column - (surface.columns - 1) / 2) * surface.turnStepRad;
    return [surface.axisAsideMm[r] + radius * Math.sin(turn), surface.alongMm[r], radius * Math.cos(turn)];
  };
  const a = at(low);
  const b = at(low + 1);
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share];
}
