import { gridPixel } from '../rectify/grid-pixel';
import { gridPoint } from '../rectify/grid-point';
import type { MapGrid } from '../rectify/millimetre-map';
import { medianOf } from '../rectify/median-of';
import { MAD_TO_SIGMA } from '../rectify/constants';
import { smoothMasked } from '../segment/smooth-masked';
import type { LineMm, PointMm } from '../units';
import { DIFFERENCE_FLOOR_EI, DIFFERENCE_K, DIFFERENCE_NEAR_MM, DIFFERENCE_SCALE_MM, DIFFERENCE_STEP_MM, LEAST_COMPARED_MM2, LEAST_DIFFERENCE_MM2 } from './constants';
import { distanceToLineMm } from './distance-to-line';
import { joinedCells } from './joined-cells';

/** The index of one photo's skin, as its camera shows it. */
export interface IndexMap {
  readonly grid: MapGrid;
  readonly erythemaIndex: Float32Array;
  /** 1 = skin whose index may be compared. */
  readonly skin: Uint8Array;
  /** 1 = reference skin, away from fold and suspected redness. */
  readonly plain: Uint8Array;
}

/** Where a toe is redder than on an earlier photo, beside the treated fold. */
export interface IndexDifference {
  /** 0 where no place stands out: which does not show that there is none. */
  readonly redderMm2: number;
  /** How far that reaches from the margin; null where no place stands out. */
  readonly reachMm: number | null;
  /** Least difference, EI, that stands out between these two photos. */
  readonly leastEi: number;
  /** Scatter of the difference over reference skin, EI. */
  readonly noiseEi: number;
}

/**
 * Compares the index place by place with an earlier photo of the same toe: what is simply that person cancels. The two photos'
 * common offset (light, white balance) is taken from skin that is reference skin on both.
 *
 * @param now the photo
 * @param earlier the earlier one
 * @param toEarlier where a place of this photo lies on the earlier one, both as their cameras show them, mm
 * @param margin this photo's treated margin, as its camera shows it
 * @returns null where too little reference skin is seen on both
 * Source: limit of detection, 3 standard deviations of the blank (IUPAC 1976).
 * @example indexDifference(now, now, (point) => point, margin)?.redderMm2 // 0
 */
export function indexDifference(now: IndexMap, earlier: IndexMap, toEarlier: (point: PointMm) => PointMm, margin: LineMm): IndexDifference | null {
  const smooth = smoothMasked(now.grid, now.erythemaIndex, now.skin, DIFFERENCE_SCALE_MM);
  const before = smoothMasked(earlier.grid, earlier.erythemaIndex, earlier.skin, DIFFERENCE_SCALE_MM);
  const lattice = latticeOver(now.grid);
  const differences = new Float32Array(lattice.widthPx * lattice.heightPx).fill(NaN);
  const blank: number[] = [];
  for (let cell = 0; cell < differences.length; cell++) {
    const point = gridPoint(lattice, Math.floor(cell / lattice.widthPx), cell % lattice.widthPx);
    const here = indexAt(now.grid, point);
    if (here === null || now.skin[here] !== 1) continue;
    const there = indexAt(earlier.grid, toEarlier(point));
    if (there === null || earlier.skin[there] !== 1) continue;
    differences[cell] = smooth[here] - before[there];
    if (now.plain[here] === 1 && earlier.plain[there] === 1 && Number.isFinite(differences[cell])) blank.push(differences[cell]);
  }
  if (blank.length * DIFFERENCE_STEP_MM ** 2 < LEAST_COMPARED_MM2) return null;
  const offsetEi = medianOf(blank);
  const noiseEi = MAD_TO_SIGMA * medianOf(blank.map((one) => Math.abs(one - offsetEi)));
  const leastEi = Math.max(DIFFERENCE_K * noiseEi, DIFFERENCE_FLOOR_EI);
  const redder = Uint8Array.from(differences, (one) => (one - offsetEi >= leastEi ? 1 : 0));
  const away = (cell: number) => distanceToLineMm(gridPoint(lattice, Math.floor(cell / lattice.widthPx), cell % lattice.widthPx), margin);
  const cells = joinedCells(redder, lattice.widthPx)
    .filter((piece) => piece.length * DIFFERENCE_STEP_MM ** 2 >= LEAST_DIFFERENCE_MM2 && piece.some((cell) => away(cell) <= DIFFERENCE_NEAR_MM))
    .flat();
  return {
    redderMm2: cells.length * DIFFERENCE_STEP_MM ** 2,
    reachMm: cells.length > 0 ? Math.max(...cells.map(away)) + DIFFERENCE_STEP_MM / 2 : null,
    leastEi,
    noiseEi,
  };
}

function latticeOver(grid: MapGrid): MapGrid {
  const ratio = DIFFERENCE_STEP_MM * grid.pxPerMm;
  return { ...grid, pxPerMm: 1 / DIFFERENCE_STEP_MM, widthPx: Math.floor(grid.widthPx / ratio), heightPx: Math.floor(grid.heightPx / ratio) };
}

function indexAt(grid: MapGrid, point: PointMm): number | null {
  const at = gridPixel(grid, point);
  const [row, column] = [Math.round(at.row), Math.round(at.column)];
  return row < 0 || column < 0 || row >= grid.heightPx || column >= grid.widthPx ? null : row * grid.widthPx + column;
}
