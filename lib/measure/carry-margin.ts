import type { LineMm, PointMm } from '../units';
import { besideLine } from './beside-line';
import { CARRY_SMOOTH_MM, CARRY_WITHIN_MM, MARGIN_SPACING_MM } from './constants';
import { resampleLine } from './resample-line';

/** A margin with how far it may lie off, one standard deviation. */
export interface UncertainLine {
  readonly line: LineMm;
  readonly uMm: number;
}

/**
 * Brings together the margin that this photo proposes and those of earlier visits, moved onto this toe: every point goes, along
 * its normal, to the mean weighted by 1 / u². Lines farther off than CARRY_WITHIN_MM say nothing about a place.
 *
 * @param proposed this photo's margin, straightened, mm
 * @param carried margins of earlier visits on this photo's toe
 * @returns the line and its uncertainty; errors of the visits are taken as half common, so that many visits do not promise too much
 * @throws RangeError where a line has fewer than two points
 * @example carryMargin({ line, uMm: 0.4 }, []).uMm // 0.4
 */
export function carryMargin(proposed: UncertainLine, carried: readonly UncertainLine[]): UncertainLine {
  if (carried.length === 0) return proposed;
  const line = resampleLine(proposed.line, MARGIN_SPACING_MM);
  const others = carried.map(({ line: other, uMm }) => ({ line: resampleLine(other, MARGIN_SPACING_MM), weight: 1 / uMm ** 2 }));
  const own = 1 / proposed.uMm ** 2;
  const offsets = line.map((point, i) => {
    const normal = normalAt(line, i);
    const there = others.flatMap(({ line: other, weight }) => {
      const { mm, atEnd } = besideLine(point, other);
      return atEnd || Math.abs(mm) > CARRY_WITHIN_MM ? [] : [{ mm: alongNormal(point, normal, other, Math.abs(mm)), weight }];
    });
    return weightedMiddle([{ mm: 0, weight: own }, ...there]);
  });
  const half = Math.round(CARRY_SMOOTH_MM / MARGIN_SPACING_MM / 2);
  const moved = line.map((point, i) => {
    const near = offsets.slice(Math.max(0, i - half), i + half + 1);
    const offset = near.reduce((total, one) => total + one, 0) / near.length;
    const normal = normalAt(line, i);
    return { acrossMm: point.acrossMm + offset * normal.acrossMm, downMm: point.downMm + offset * normal.downMm };
  });
  const independent = 1 / Math.sqrt(own + others.reduce((total, { weight }) => total + weight, 0));
  const common = Math.min(proposed.uMm, ...carried.map(({ uMm }) => uMm)) * Math.SQRT1_2;
  return { line: moved, uMm: Math.max(independent, common) };
}

/**
 * Of two their mean; of more the median: half of all weight on either side, read between the middles of neighbouring weights, so that
 * one line that is far off moves nothing.
 */
function weightedMiddle(offsets: readonly { readonly mm: number; readonly weight: number }[]): number {
  const all = offsets.reduce((sum, { weight }) => sum + weight, 0);
  if (offsets.length < 3) return offsets.reduce((sum, { mm, weight }) => sum + mm * weight, 0) / all;
  const sorted = [...offsets].sort((a, b) => a.mm - b.mm);
  let [before, at] = [sorted[0], sorted[0].weight / 2];
  for (const one of sorted.slice(1)) {
    const here = at + (before.weight + one.weight) / 2;
    if (here >= all / 2) return before.mm + Math.max(0, (all / 2 - at) / (here - at)) * (one.mm - before.mm);
    [before, at] = [one, here];
  }
  return before.mm;
}

/** Signed way along the normal to the other line: its distance, on the side where the nearest point lies. */
function alongNormal(point: PointMm, normal: PointMm, other: LineMm, distanceMm: number): number {
  const ahead = { acrossMm: point.acrossMm + distanceMm * normal.acrossMm, downMm: point.downMm + distanceMm * normal.downMm };
  const behind = { acrossMm: point.acrossMm - distanceMm * normal.acrossMm, downMm: point.downMm - distanceMm * normal.downMm };
  return Math.abs(besideLine(ahead, other).mm) <= Math.abs(besideLine(behind, other).mm) ? distanceMm : -distanceMm;
}

function normalAt(line: LineMm, i: number): PointMm {
  const from = line[Math.max(0, i - 1)];
  const to = line[Math.min(line.length - 1, i + 1)];
  const length = Math.hypot(to.acrossMm - from.acrossMm, to.downMm - from.downMm) || 1;
  return { acrossMm: -(to.downMm - from.downMm) / length, downMm: (to.acrossMm - from.acrossMm) / length };
}
