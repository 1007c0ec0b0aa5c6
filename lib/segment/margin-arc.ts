import type { PointMm, RingMm } from '../units';
import { FOLD_END_MM, HALF, LEAST_MARGIN_MM, MARGIN_GAP_MM, MARGIN_LEVEL, MARGIN_STEP_MM } from './constants';
import { highestNearby } from './highest-nearby';
import type { TissueFields } from './segmentation';

/**
 * Which points of the nail unit's outline are treated margin: the longest stretch along which its field speaks, gone on with to
 * the middle of the proximal fold, and along the groove where the margin is covered.
 *
 * @param fields tissue fields
 * @param ring points along the nail unit's outline, MARGIN_STEP_MM apart
 * @param heard the margin's field at each of them
 * @param isOnSide does a point lie on the treated half?
 * @returns indices from the tip on; null when no stretch of at least LEAST_MARGIN_MM is heard
 * @example marginArc(fields, ring, heard, ({ acrossMm }) => acrossMm < 42)
 */
export function marginArc(fields: TissueFields, ring: RingMm, heard: readonly number[], isOnSide: (point: PointMm) => boolean): readonly number[] | null {
  const arc = longestArc(heard.map((value, i) => (isOnSide(ring[i]) ? value : 0)), ring.length);
  if (!arc || arc.length * MARGIN_STEP_MM < LEAST_MARGIN_MM) return null;
  return alongGroove(fields, ring, toProximalMiddle(ring, arc, isOnSide), isOnSide);
}

/** The stretch that was heard, gone on with along the ring, away from the tip, as far as the side reaches. */
function toProximalMiddle(ring: readonly PointMm[], arc: readonly number[], isOnSide: (point: PointMm) => boolean): number[] {
  const n = ring.length;
  const tipFirst = ring[arc[0]].downMm <= ring[arc[arc.length - 1]].downMm ? [...arc] : [...arc].reverse();
  const step = (tipFirst[1] - tipFirst[0] + n) % n === 1 ? 1 : n - 1;
  for (let i = (tipFirst[tipFirst.length - 1] + step) % n; isOnSide(ring[i]) && tipFirst.length < n; i = (i + step) % n) tipFirst.push(i);
  return tipFirst;
}

/**
 * Where raw tissue has grown over the margin its field falls silent, and yet the groove's outer border is the margin. A stretch
 * of groove that goes on toward the tip for longer than a fold's rounded end belongs to it.
 */
function alongGroove(fields: TissueFields, ring: readonly PointMm[], arc: readonly number[], isOnSide: (point: PointMm) => boolean): readonly number[] {
  const n = ring.length;
  const step = (arc[0] - arc[1] + n) % n === 1 ? 1 : n - 1;
  const silent: number[] = [];
  // Where the outline turns across the tip the side of the nail is over.
  const leadsToTip = (i: number) => ring[i].downMm < ring[(i - step + n) % n].downMm - MARGIN_STEP_MM / 2;
  for (let i = (arc[0] + step) % n; isOnSide(ring[i]) && leadsToTip(i) && isBesideGroove(fields, ring[i]); i = (i + step) % n) silent.unshift(i);
  return silent.length * MARGIN_STEP_MM > FOLD_END_MM ? [...silent, ...arc] : arc;
}

const isBesideGroove = (fields: TissueFields, point: PointMm): boolean => highestNearby(fields.grid, fields.groove, point) > HALF;

/** Indices of the longest stretch (cyclic) of supported points, short gaps bridged. */
function longestArc(values: readonly number[], n: number): number[] | null {
  const supported = values.map((value) => value >= MARGIN_LEVEL);
  const start = supported.indexOf(false);
  if (start < 0) return null;
  const mostGap = Math.round(MARGIN_GAP_MM / MARGIN_STEP_MM);
  let best: number[] = [];
  let arc: number[] = [];
  let gap: number[] = [];
  for (let k = 1; k <= n; k++) {
    const i = (start + k) % n;
    if (supported[i]) {
      arc.push(...gap, i);
      gap = [];
      if (arc.length > best.length) best = [...arc];
    } else if (arc.length > 0 && gap.push(i) > mostGap) {
      arc = [];
      gap = [];
    }
  }
  return best.length > 0 ? best : null;
}

