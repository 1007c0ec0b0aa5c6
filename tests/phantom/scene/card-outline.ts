/** The cut outline of a card as a table of signed distances: positive on the card, negative outside and in the notch. */
import type { CardFace } from './card-face';

export interface CardOutline {
  /** Signed distance in true mm: exact within 9 mm of the edge, to about 2 mm beyond; outside the table its border. */
  insideMm(acrossMm: number, downMm: number): number;
}

type Corner = readonly [number, number];

const STEP_MM = 0.4;
const BORDER_MM = 40;
const BLOCK = 8;

function outlineCorners({ geometry: card, cut }: CardFace, scale: number): Corner[] {
  const corners: Corner[] = [[0, 0], [card.widthMm, 0], [card.widthMm, card.heightMm]];
  const fromRight = cut[0].acrossMm > cut[cut.length - 1].acrossMm ? cut : [...cut].reverse();
  for (const point of fromRight) corners.push([point.acrossMm, point.downMm]);
  corners.push([0, card.heightMm]);
  return corners.map(([x, y]) => [x * scale, y * scale]);
}

function signedDistance(corners: readonly Corner[], x: number, y: number): number {
  let nearest = Infinity;
  let inside = false;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [ax, ay] = corners[j];
    const [bx, by] = corners[i];
    const ex = bx - ax, ey = by - ay;
    const along = Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey || 1)));
    const dx = x - ax - along * ex, dy = y - ay - along * ey;
    nearest = Math.min(nearest, dx * dx + dy * dy);
    if (ay > y !== by > y && x < (ex * (y - ay)) / ey + ax) inside = !inside;
  }
  return (inside ? 1 : -1) * Math.sqrt(nearest);
}

const kept = new Map<string, CardOutline>();

/** The outline of a card printed at `scale` times its designed size; the last few are kept. */
export function cardOutline(face: CardFace, scale: number): CardOutline {
  const key = JSON.stringify([face.cut, face.geometry.widthMm, face.geometry.heightMm, scale]);
  const known = kept.get(key);
  if (known !== undefined) return known;
  const outline = tabulate(face, scale);
  if (kept.size > 7) kept.clear();
  kept.set(key, outline);
  return outline;
}

function tabulate(face: CardFace, scale: number): CardOutline {
  const card = face.geometry;
  const corners = outlineCorners(face, scale);
  const columns = Math.ceil((card.widthMm * scale + 2 * BORDER_MM) / STEP_MM) + 1;
  const rows = Math.ceil((card.heightMm * scale + 2 * BORDER_MM) / STEP_MM) + 1;
  const table = new Float32Array(rows * columns);
  // Exact near the edge; far from it a distance found eight steps away is bound to change by no more than that.
  for (let r = 0; r < rows; r += BLOCK) {
    for (let c = 0; c < columns; c += BLOCK) {
      const [x, y] = [(c + BLOCK / 2) * STEP_MM - BORDER_MM, (r + BLOCK / 2) * STEP_MM - BORDER_MM];
      const middle = signedDistance(corners, x, y);
      const far = Math.abs(middle) > 3 * BLOCK * STEP_MM;
      for (let i = r; i < Math.min(rows, r + BLOCK); i++) {
        for (let j = c; j < Math.min(columns, c + BLOCK); j++) {
          table[i * columns + j] = far ? middle : signedDistance(corners, j * STEP_MM - BORDER_MM, i * STEP_MM - BORDER_MM);
        }
      }
    }
  }
  return {
    insideMm(acrossMm, downMm) {
      const c = Math.min(columns - 1.001, Math.max(0, (acrossMm + BORDER_MM) / STEP_MM));
      const r = Math.min(rows - 1.001, Math.max(0, (downMm + BORDER_MM) / STEP_MM));
      const c0 = c | 0, r0 = r | 0, fc = c - c0, fr = r - r0;
      const i = r0 * columns + c0;
      const top = table[i] + (table[i + 1] - table[i]) * fc;
      const bottom = table[i + columns] + (table[i + columns + 1] - table[i + columns]) * fc;
      return top + (bottom - top) * fr;
    },
  };
}
