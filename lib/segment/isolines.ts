import type { MapGrid } from '../rectify/millimetre-map';
import type { PointPx } from '../units';

/** A closed line at a level; what is above the level lies inside an outer line and outside a hole's. */
export interface Isoline {
  readonly points: readonly PointPx[];
  readonly hole: boolean;
  readonly areaPx: number;
}

/** Sides of a square of four pixels. */
const [TOP, RIGHT, BOTTOM, LEFT] = [0, 1, 2, 3];
const NONE = -1;

/**
 * Where a line that enters a square by one side leaves it, with what is above on its left. Row: which corners are above (1 lower
 * left, 2 lower right, 4 upper right, 8 upper left); column: the side it enters by. Diagonal neighbours stay apart.
 */
const LEAVES_BY: readonly (readonly number[])[] = [
  [NONE, NONE, NONE, NONE],
  [NONE, NONE, LEFT, NONE],
  [NONE, BOTTOM, NONE, NONE],
  [NONE, LEFT, NONE, NONE],
  [RIGHT, NONE, NONE, NONE],
  [RIGHT, NONE, LEFT, NONE],
  [BOTTOM, NONE, NONE, NONE],
  [LEFT, NONE, NONE, NONE],
  [NONE, NONE, NONE, TOP],
  [NONE, NONE, TOP, NONE],
  [NONE, BOTTOM, NONE, TOP],
  [NONE, TOP, NONE, NONE],
  [NONE, NONE, NONE, RIGHT],
  [NONE, NONE, RIGHT, NONE],
  [NONE, NONE, NONE, BOTTOM],
  [NONE, NONE, NONE, NONE],
];

/**
 * Lines of one level between the pixels of a field: marching squares with linear interpolation, each line followed from
 * where it is met first. Beyond the field everything is below the level, half a pixel away.
 *
 * @param grid size of the field
 * @param field one finite value per pixel
 * @param level pixels at or above it are inside
 * @returns closed lines in pixels (centres of pixels are whole numbers), the first point not repeated
 * Source: Lorensen and Cline, Computer Graphics 1987;21(4):163-169, in two dimensions.
 * @example isolines({ ...grid, widthPx: 1, heightPx: 1 }, Float32Array.of(1), 0.5)[0].areaPx // 0.5
 */
export function isolines(grid: MapGrid, field: Float32Array | Uint8Array, level: number): Isoline[] {
  const padded = aboveLevel(grid, field, level);
  const met = new Uint8Array(padded.length);
  const stride = grid.widthPx + 2;
  const lines: Isoline[] = [];
  for (let at = stride; at < padded.length - stride; at++) {
    // Every closed line somewhere runs down past a pixel that is above, with one that is not on its right-hand side.
    if (padded[at] === 0 && padded[at + 1] === 1 && met[at] === 0) lines.push(asIsoline(follow(grid, field, level, padded, met, at)));
  }
  return lines;
}

/** 1 = at or above the level; with a frame of zeros one pixel wide. */
function aboveLevel({ widthPx, heightPx }: MapGrid, field: Float32Array | Uint8Array, level: number): Uint8Array {
  const stride = widthPx + 2;
  const padded = new Uint8Array(stride * (heightPx + 2));
  for (let row = 0, i = 0; row < heightPx; row++) {
    for (let column = 0, at = (row + 1) * stride + 1; column < widthPx; column++, at++, i++) if (field[i] >= level) padded[at] = 1;
  }
  return padded;
}

/** Walks from square to square; `first` is the padded upper left pixel of the square the line enters by its top. */
function follow(grid: MapGrid, field: Float32Array | Uint8Array, level: number, padded: Uint8Array, met: Uint8Array, first: number): PointPx[] {
  const stride = grid.widthPx + 2;
  const points: PointPx[] = [];
  let [at, side] = [first, TOP];
  do {
    if (side === TOP) met[at] = 1;
    const corners = padded[at + stride] | (padded[at + stride + 1] << 1) | (padded[at + 1] << 2) | (padded[at] << 3);
    const exit = LEAVES_BY[corners][side];
    points.push(crossing(grid, field, level, at, exit));
    at += exit === TOP ? -stride : exit === BOTTOM ? stride : exit === RIGHT ? 1 : -1;
    side = (exit + 2) % 4;
  } while (at !== first || side !== TOP);
  return points;
}

/** Where the level is crossed on one side of a square. */
function crossing({ widthPx, heightPx }: MapGrid, field: Float32Array | Uint8Array, level: number, at: number, side: number): PointPx {
  const row = Math.floor(at / (widthPx + 2)) - 1 + (side === BOTTOM ? 1 : 0);
  const column = (at % (widthPx + 2)) - 1 + (side === RIGHT ? 1 : 0);
  const along = side === TOP || side === BOTTOM;
  const [nextRow, nextColumn] = along ? [row, column + 1] : [row + 1, column];
  const inField = row >= 0 && column >= 0 && nextRow < heightPx && nextColumn < widthPx;
  const here = inField ? field[row * widthPx + column] : 0;
  const share = inField ? (level - here) / (field[nextRow * widthPx + nextColumn] - here) : 0.5;
  return along ? { row, column: column + share } : { row: row + share, column };
}

function asIsoline(points: readonly PointPx[]): Isoline {
  let twice = 0;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) twice += points[i].column * points[j].row - points[j].column * points[i].row;
  return { points, hole: twice < 0, areaPx: Math.abs(twice) / 2 };
}
