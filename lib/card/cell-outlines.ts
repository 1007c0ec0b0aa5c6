import type { PointMm, RingMm } from '../units';

type Corner = readonly [across: number, down: number];
const keyOf = ([across, down]: Corner): string => `${across},${down}`;

/** The sides of inked cells that border on paper, each running clockwise round its ink, by where it starts. */
function borderSides(cells: readonly (readonly boolean[])[]): Map<string, Corner[]> {
  const sides = new Map<string, Corner[]>();
  const inked = (row: number, column: number): boolean => cells[row]?.[column] ?? false;
  const add = (from: Corner, to: Corner): void => {
    sides.set(keyOf(from), [...(sides.get(keyOf(from)) ?? []), to]);
  };
  cells.forEach((line, row) =>
    line.forEach((ink, column) => {
      if (!ink) return;
      if (!inked(row - 1, column)) add([column, row], [column + 1, row]);
      if (!inked(row, column + 1)) add([column + 1, row], [column + 1, row + 1]);
      if (!inked(row + 1, column)) add([column + 1, row + 1], [column, row + 1]);
      if (!inked(row, column - 1)) add([column, row + 1], [column, row]);
    }),
  );
  return sides;
}

/** Is `turn` where the outline changes direction? */
function isTurn(before: Corner, turn: Corner, after: Corner): boolean {
  return (turn[0] - before[0]) * (after[1] - turn[1]) !== (turn[1] - before[1]) * (after[0] - turn[0]);
}

/** Follows sides from corner to corner until none is left. */
function loops(sides: Map<string, Corner[]>): Corner[][] {
  const found: Corner[][] = [];
  for (const start of sides.keys()) {
    while ((sides.get(start) ?? []).length > 0) {
      const [across, down] = start.split(',').map(Number);
      const loop: Corner[] = [];
      let here: Corner = [across, down];
      do {
        loop.push(here);
        here = sides.get(keyOf(here))?.pop() as Corner;
      } while (keyOf(here) !== start);
      found.push(loop);
    }
  }
  return found;
}

/**
 * The outlines of the inked cells of a grid, holes included. Cells that touch are one outline, so no printer and no
 * viewer can leave a seam between them.
 *
 * @param cells rows of columns, true where there is ink
 * @param topLeft of the grid, mm
 * @param cellMm side of a cell, mm
 * @returns rings of one shape, clockwise round ink, anticlockwise round holes, corners only.
 * @example cellOutlines([[true, true]], { acrossMm: 0, downMm: 0 }, 2)[0].length // 4
 */
export function cellOutlines(cells: readonly (readonly boolean[])[], topLeft: PointMm, cellMm: number): RingMm[] {
  return loops(borderSides(cells)).map((loop) =>
    loop
      .filter((corner, place) => isTurn(loop.at(place - 1) as Corner, corner, loop[(place + 1) % loop.length]))
      .map(([across, down]) => ({
        acrossMm: topLeft.acrossMm + across * cellMm,
        downMm: topLeft.downMm + down * cellMm,
      })),
  );
}
