import type { Fiducial } from '../card/card-geometry';
import type { PointMm, PointPx } from '../units';
import { CORNER_NOISE_PX, INSET_PRIOR_MM } from './constants';
import { CORNER_SIGNS, fiducialCorners } from './fiducial-corners';
import type { Homography } from './homography';
import { solveLinear } from './solve-linear';

/** A fiducial as designed and as seen. */
export interface SeenFiducial {
  readonly design: Fiducial;
  readonly cornersPx: readonly PointPx[];
}

/**
 * One Gauss–Newton step over the eight numbers of the map and the inset common to all edges. The inset is held near
 * zero by its prior.
 *
 * @param h the map so far, image from card
 * @param insetMm the inset so far
 * @param seen the fiducials
 * @returns nine changes, the inset's last; null when the corners do not fix them
 * @example cardPlaneStep(h, 0, seen)?.[8] // 0.04
 */
export function cardPlaneStep(h: Homography, insetMm: number, seen: readonly SeenFiducial[]): number[] | null {
  const normal = Array.from({ length: 9 }, () => new Array<number>(9).fill(0));
  const right = new Array<number>(9).fill(0);
  const add = (row: readonly number[], residual: number, weight: number) => {
    for (let i = 0; i < 9; i++) {
      right[i] += weight * row[i] * residual;
      for (let j = 0; j < 9; j++) normal[i][j] += weight * row[i] * row[j];
    }
  };
  for (const { design, cornersPx } of seen) {
    const corners = fiducialCorners(design, insetMm);
    corners.forEach((card, i) => {
      const { x, y, byX, byY, w } = withDerivatives(h, card);
      const toX = -CORNER_SIGNS[i][0];
      const toY = -CORNER_SIGNS[i][1];
      const image = cornersPx[i];
      const weight = 1 / CORNER_NOISE_PX ** 2;
      const { acrossMm: a, downMm: d } = card;
      add([a / w, d / w, 1 / w, 0, 0, 0, (-x * a) / w, (-x * d) / w, byX.x * toX + byY.x * toY], image.column - x, weight);
      add([0, 0, 0, a / w, d / w, 1 / w, (-y * a) / w, (-y * d) / w, byX.y * toX + byY.y * toY], image.row - y, weight);
    });
  }
  normal[8][8] += 1 / INSET_PRIOR_MM ** 2;
  right[8] -= insetMm / INSET_PRIOR_MM ** 2;
  return solveScaled(normal, right);
}

/** Solves with rows and columns scaled by the diagonal: the map's numbers differ by five orders of magnitude. */
function solveScaled(normal: number[][], right: number[]): number[] | null {
  const scale = normal.map((row, i) => 1 / Math.sqrt(row[i] || 1));
  const scaled = normal.map((row, i) => row.map((value, j) => value * scale[i] * scale[j]));
  const solution = solveLinear(scaled, right.map((value, i) => value * scale[i]));
  return solution && solution.map((value, i) => value * scale[i]);
}

function withDerivatives(h: Homography, { acrossMm: a, downMm: d }: PointMm) {
  const w = h[6] * a + h[7] * d + h[8];
  const x = (h[0] * a + h[1] * d + h[2]) / w;
  const y = (h[3] * a + h[4] * d + h[5]) / w;
  return {
    x,
    y,
    w,
    byX: { x: (h[0] - x * h[6]) / w, y: (h[3] - y * h[6]) / w },
    byY: { x: (h[1] - x * h[7]) / w, y: (h[4] - y * h[7]) / w },
  };
}
