import { median } from 'd3-array';
import type { UprightPhoto } from '../photo/upright-photo';
import type { PointPx } from '../units';
import { type EdgeProfile, halfLevelCrossing, riseDistancePx, sampleEdgeProfile } from './edge-profile';
import type { CardFit } from './fit-card';
import type { FoundFiducial } from './found-fiducial';
import { toCard } from './homography';

const PROFILES_PER_SIDE = 12;
const STEP_PX = 0.25;
const CELLS_PER_SIDE = 6;
const LOOK_CELLS = 0.95;
/**
 * What reading between pixels adds to a 10–90 % distance: linear interpolation at all phases acts as a triangle two
 * pixels wide, variance 1/6 px²; a Gaussian edge of that variance rises over 2.563·√(1/6) px. Taken off in quadrature.
 */
const INTERPOLATION_RISE_PX = 2.563 * Math.sqrt(1 / 6);

/** Camera shake blurs one way only. Directions that differ by less than this are the same blur, measured twice. */
const ONE_WAY_RATIO = 1.25;

/**
 * Blur as a length on the card: the 10–90 % distance of the fiducials' edges, in the blurrier of the card's two
 * directions when shake has made them differ, else their mean (the larger of two noisy readings would read too high).
 * Stated in millimetres, so it does not depend on the camera's pixels.
 *
 * @param photo the upright photo
 * @param fit the card's plane
 * @returns mm, or null when no edge is clear enough to tell
 * @example edgeSpreadMm(photo, fit) // 0.24
 */
export function edgeSpreadMm(photo: UprightPhoto, fit: CardFit): number | null {
  const bySide = [0, 1, 2, 3].map((side) => fit.used.map((one) => sideSpreadMm(photo, fit, one, side)).filter((mm) => mm !== null));
  const upDown = [...bySide[0], ...bySide[2]];
  const leftRight = [...bySide[1], ...bySide[3]];
  const medians = [upDown, leftRight].flatMap((group) => median(group) ?? []);
  if (medians.length === 0) return null;
  const [sharper, blurrier] = [Math.min(...medians), Math.max(...medians)];
  return blurrier > ONE_WAY_RATIO * sharper ? blurrier : (sharper + blurrier) / 2;
}

function sideSpreadMm(photo: UprightPhoto, fit: CardFit, one: FoundFiducial, side: number): number | null {
  const from = one.cornersPx[side];
  const to = one.cornersPx[(side + 1) % 4];
  const lengthPx = Math.hypot(to.row - from.row, to.column - from.column);
  // Corners run clockwise in a picture whose rows go down: the outside lies to the left of the way.
  const outward = { row: -(to.column - from.column) / lengthPx, column: (to.row - from.row) / lengthPx };
  const halfLengthPx = (lengthPx / CELLS_PER_SIDE) * LOOK_CELLS;
  const mean = meanProfile(photo, from, to, outward, halfLengthPx);
  const risePx = mean && riseDistancePx(mean);
  if (!risePx) return null;
  const middle = { row: (from.row + to.row) / 2, column: (from.column + to.column) / 2 };
  const a = toCard(fit.cardFromImage, middle);
  const b = toCard(fit.cardFromImage, { row: middle.row + outward.row, column: middle.column + outward.column });
  const opticalPx = Math.sqrt(Math.max(0, risePx ** 2 - INTERPOLATION_RISE_PX ** 2));
  return opticalPx * Math.hypot(b.acrossMm - a.acrossMm, b.downMm - a.downMm);
}

/** Profiles along one side, each moved so that its own crossing is at 0, averaged: noise and slant fall out. */
function meanProfile(photo: UprightPhoto, from: PointPx, to: PointPx, outward: PointPx, halfLengthPx: number): EdgeProfile | null {
  let sum: Float64Array | null = null;
  let count = 0;
  for (let i = 0; i < PROFILES_PER_SIDE; i++) {
    const share = 0.2 + (0.6 * i) / (PROFILES_PER_SIDE - 1);
    const at = { row: from.row + share * (to.row - from.row), column: from.column + share * (to.column - from.column) };
    const first = sampleEdgeProfile(photo, at, outward, halfLengthPx, STEP_PX);
    const offset = first && halfLevelCrossing(first);
    if (offset === null) continue;
    const moved = { row: at.row + offset * outward.row, column: at.column + offset * outward.column };
    const profile = sampleEdgeProfile(photo, moved, outward, halfLengthPx, STEP_PX);
    if (!profile) continue;
    sum ??= new Float64Array(profile.light.length);
    for (let k = 0; k < sum.length; k++) sum[k] += profile.light[k];
    count++;
  }
  if (!sum || count < PROFILES_PER_SIDE / 2) return null;
  return { light: sum.map((value) => value / count), stepPx: STEP_PX, halfLengthPx };
}
