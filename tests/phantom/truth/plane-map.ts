/**
 * The toe as seen from straight above: for every place of a grid on the card's plane, where on the skin a plumb line
 * first touches. Truth outlines and label maps are read from it.
 */
import type { PlacedCard, PlacedToe } from '../scene/build-scene';

export interface PlaneMap {
  readonly originAcrossMm: number;
  readonly originDownMm: number;
  readonly pxPerMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Fractional row and column of the toe's table, or −1 where there is no toe. */
  readonly row: Float32Array;
  readonly column: Float32Array;
  /** 1 where the card lies over it. */
  readonly underCard: Uint8Array;
}

const ABOVE_MM = 30;

/** Drops plumb lines on a grid. */
export function planeMap(toe: PlacedToe, card: PlacedCard | null, grid: Omit<PlaneMap, 'row' | 'column' | 'underCard'>): PlaneMap {
  const { originAcrossMm, originDownMm, pxPerMm, widthPx, heightPx } = grid;
  const row = new Float32Array(widthPx * heightPx).fill(-1);
  const column = new Float32Array(widthPx * heightPx).fill(-1);
  const underCard = new Uint8Array(widthPx * heightPx);
  const [dx, dy, dz] = toe.pose.turnToToe([0, 0, -1]);
  const start = toe.pose.toToe([originAcrossMm, originDownMm, ABOVE_MM]);
  const acrossStep = toe.pose.turnToToe([1, 0, 0]);
  const downStep = toe.pose.turnToToe([0, 1, 0]);
  const hit = { row: 0, column: 0 };
  for (let r = 0, i = 0; r < heightPx; r++) {
    let before = -1;
    for (let c = 0; c < widthPx; c++, i++) {
      const across = originAcrossMm + c / pxPerMm;
      const down = originDownMm + r / pxPerMm;
      const t = toe.tracer.trace(
        start[0] + (c * acrossStep[0] + r * downStep[0]) / pxPerMm,
        start[1] + (c * acrossStep[1] + r * downStep[1]) / pxPerMm,
        start[2] + (c * acrossStep[2] + r * downStep[2]) / pxPerMm,
        dx, dy, dz, 60, hit, before,
      );
      before = t;
      if (t < 0) continue;
      row[i] = hit.row;
      column[i] = hit.column;
      if (card !== null && ABOVE_MM - t < 0 && card.outline.insideMm(across, down) > 0) underCard[i] = 1;
    }
  }
  return { ...grid, row, column, underCard };
}

/** One field of the toe's table brought onto the plane; `missing` where there is no toe. */
export function onPlane(map: PlaneMap, toe: PlacedToe, field: Float32Array, missing: number): Float32Array {
  const { columns, rows } = toe.surface;
  const out = new Float32Array(map.row.length).fill(missing);
  for (let i = 0; i < out.length; i++) {
    if (map.row[i] < 0) continue;
    const r = Math.min(rows - 2, map.row[i] | 0), c = Math.min(columns - 2, map.column[i] | 0);
    const fr = map.row[i] - r, fc = map.column[i] - c;
    const j = r * columns + c;
    const top = field[j] + (field[j + 1] - field[j]) * fc;
    const bottom = field[j + columns] + (field[j + columns + 1] - field[j + columns]) * fc;
    out[i] = top + (bottom - top) * fr;
  }
  return out;
}
