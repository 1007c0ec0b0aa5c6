/** Numbers on the skin itself, where truth's others are projections onto the card's plane. */
import { bisectLeft } from 'd3-array';
import type { TruthRing } from '../phantom-truth';
import type { PlacedToe } from '../scene/build-scene';
import type { SkinPoint } from '../scene/nail-unit';
import { stretch, type ToeSurface } from '../scene/toe-surface';
import type { PlaneMap } from './plane-map';

/** Skin so nearly upright that a plumb line grazes it counts no more than this many times its projection. */
const MOST_STRETCH = 12;

export interface OnSkin {
  /** Area on the skin of what is seen from straight above. */
  readonly unrolledArea: number;
  /** Greatest distance along the unrolled skin from the region to the margin; null without a region. */
  readonly unrolledReach: number | null;
}

/** Of a region given by its rings in the plane; `margin` on the unrolled skin. */
export function onSkin(map: PlaneMap, toe: PlacedToe, rings: readonly TruthRing[], margin: readonly SkinPoint[]): OnSkin {
  const { surface, pose } = toe;
  const up = pose.turnToToe([0, 0, 1]);
  const onRelief = unrolledRelief(surface);
  const line = margin.map(({ alongMm, acrossMm }) => {
    const rowMm = stretch(Math.max(0, alongMm));
    const start = Math.min(surface.rows - 1, Math.round(rowMm / surface.rowStepMm)) * surface.columns;
    // Places are named on the bare body; swelling makes the way across the skin longer.
    return [rowMm, onRelief[start + bisectLeft(surface.acrossMm.subarray(start, start + surface.columns), acrossMm)]] as const;
  });
  const isNear = boundsOf(rings);
  let area = 0;
  let reach: number | null = null;
  for (let i = 0; i < map.row.length; i++) {
    const across = map.originAcrossMm + (i % map.widthPx) / map.pxPerMm;
    const down = map.originDownMm + Math.floor(i / map.widthPx) / map.pxPerMm;
    if (map.row[i] < 0 || !isNear(across, down) || !isInside(rings, across, down)) continue;
    const texel = Math.round(map.row[i]) * surface.columns + Math.round(map.column[i]);
    const facing = up.reduce((sum, part, k) => sum + part * surface.normals[3 * texel + k], 0);
    area += Math.min(MOST_STRETCH, 1 / Math.max(1e-6, facing));
    const [row, aside] = [map.row[i] * surface.rowStepMm, onRelief[texel]];
    let least = Infinity;
    for (const [alongMm, acrossMm] of line) least = Math.min(least, (row - alongMm) ** 2 + (aside - acrossMm) ** 2);
    reach = Math.max(reach ?? 0, Math.sqrt(least));
  }
  return { unrolledArea: area / map.pxPerMm ** 2, unrolledReach: reach };
}

/** Places along the skin of each section with all that swells and sinks, from its middle. */
function unrolledRelief({ rows, columns, radiusMm, turnStepRad }: ToeSurface): Float32Array {
  const across = new Float32Array(rows * columns);
  const middle = (columns - 1) / 2;
  for (let row = 0; row < rows; row++) {
    for (const side of [-1, 1]) {
      for (let step = 1; step <= middle; step++) {
        const at = row * columns + middle + side * step;
        const before = at - side;
        const run = ((radiusMm[at] + radiusMm[before]) / 2) * turnStepRad;
        across[at] = across[before] + side * Math.hypot(run, radiusMm[at] - radiusMm[before]);
      }
    }
  }
  return across;
}

/** Most of the plane lies outside the box round all rings. */
function boundsOf(rings: readonly TruthRing[]): (x: number, y: number) => boolean {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of rings.flatMap(({ ring }) => ring)) {
    [left, right, top, bottom] = [Math.min(left, x), Math.max(right, x), Math.min(top, y), Math.max(bottom, y)];
  }
  return (x, y) => x >= left && x <= right && y >= top && y <= bottom;
}

/** Inside by the even-odd rule: holes are rings too. */
function isInside(rings: readonly TruthRing[], x: number, y: number): boolean {
  let inside = false;
  for (const { ring } of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [ax, ay] = ring[i];
      const [bx, by] = ring[j];
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    }
  }
  return inside;
}
