import { describe, expect, it } from 'vitest';
import { leanPoint } from '../../../lib/measure/lean-point';
import { straightenOutlines } from '../../../lib/measure/straighten-outlines';
import { fromToeFrame, toToeFrame } from '../../../lib/measure/toe-frame';
import { type ToeRelief, facingLens, straightenPoint } from '../../../lib/measure/toe-relief';
import type { ToeSection } from '../../../lib/measure/toe-section';
import type { PointMm } from '../../../lib/units';
import { NOTHING, SIMPLE } from './simple-toe';

/** An ellipse, for which much is known in closed form. */
const SHAPE = { flatness: 0.8, squareness: 2 };
const FLATNESS = 0.8;
const FOLD_SHARE = 0.72;
const lens = { acrossMm: -110, downMm: 190, heightMm: 260 };
const axis = { across: -0.28, down: 0.96 };
const AT_FOLD = Math.sqrt(1 - FOLD_SHARE ** 2);

interface Photographed {
  readonly relief: ToeRelief;
  readonly flat: PointMm;
  readonly seen: PointMm;
}

/**
 * A place of a straight toe and where a lens shows it, by exact central projection (similar triangles) of every place of its
 * section, underside included; the relief is what its outline shows then, and nothing else.
 */
function photographed(shape: ToeSection, halfWidthMm: number, share: number, alongMm: number): Photographed {
  const { flatness, squareness: n } = shape;
  const foot = toToeFrame(lens, axis);
  const foldMm = flatness * halfWidthMm * (1 - FOLD_SHARE ** n) ** (1 / n);
  const project = (place: number, footMm: number, zMm: number) => footMm + (place - footMm) * (lens.heightMm / (lens.heightMm - zMm + foldMm));
  const centreMm = 42;
  const edge = Array.from({ length: 40_001 }, (_, i) => {
    const turn = (i / 40_000) * 2 * Math.PI;
    const place = (trig: number) => Math.sign(trig) * Math.abs(trig) ** (2 / n);
    return project(centreMm + halfWidthMm * place(Math.sin(turn)), foot.acrossMm, flatness * halfWidthMm * place(Math.cos(turn)));
  });
  const [left, right] = [edge.reduce((least, one) => Math.min(least, one)), edge.reduce((most, one) => Math.max(most, one))];
  const cylinder = { axis, startMm: 0, halfWidthsMm: Array.from({ length: 160 }, () => (right - left) / 2), centreMm: (left + right) / 2, centreSlope: 0 };
  const zMm = flatness * halfWidthMm * (1 - Math.abs(share) ** n) ** (1 / n);
  const flat = { acrossMm: centreMm + share * halfWidthMm, downMm: alongMm };
  const seen = { acrossMm: project(flat.acrossMm, foot.acrossMm, zMm), downMm: project(alongMm, foot.downMm, zMm) };
  return { relief: { cylinder, lens, shape }, flat: fromToeFrame(flat, axis), seen: fromToeFrame(seen, axis) };
}

describe('a place of a toe that a lens shows aslant', () => {
  it.each([
    [2, 10, 0, 20], [2, 10, 0.5, 20], [2, 10, -0.5, 25], [2, 8, 0.72, 30], [2.3, 12, -0.3, 15], [2.3, 12, 0.75, 35], [2.6, 9, 0.6, 22], [2.6, 11, -0.9, 28],
  ])('squareness %d, half width %d mm, share %d, %d mm along: lies where central projection took it from', (squareness, halfWidthMm, share, alongMm) => {
    const { relief, flat, seen } = photographed({ flatness: 0.85, squareness }, halfWidthMm, share, alongMm);
    const straight = straightenPoint(relief, seen);
    // The outline is read as if all of it were seen under one lean; near the horizon, where this toe's is at 0.85, little grows much.
    expect(Math.hypot(straight.acrossMm - flat.acrossMm, straight.downMm - flat.downMm)).toBeLessThan(share > 0.7 ? 0.35 : 0.12);
    expect(Math.hypot(seen.acrossMm - flat.acrossMm, seen.downMm - flat.downMm) > 0.4 || Math.abs(share) > 0.5).toBe(true);
  });

  it('lies on the horizon where it is seen at the toe’s outline, and as far beyond as it is seen beyond', () => {
    const cylinder = { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10 * Math.hypot(1, FLATNESS)], centreMm: 40, centreSlope: 0 };
    const relief = { cylinder, lens: { acrossMm: -1e7, downMm: 0, heightMm: 1e7 }, shape: SHAPE };
    const outlineMm = 40 + 10 * Math.hypot(1, FLATNESS);
    const middleMm = 40 + 8 * AT_FOLD;
    // On x²/W² + z²/(kW)² = 1 a line of sight at 45° touches at x / W = 1 / √(1 + k²).
    expect(straightenPoint(relief, { acrossMm: outlineMm, downMm: 0 }).acrossMm).toBeCloseTo(middleMm + 10 / Math.hypot(1, FLATNESS), 1);
    expect(straightenPoint(relief, { acrossMm: outlineMm + 1.5, downMm: 0 }).acrossMm).toBeCloseTo(middleMm + 10 / Math.hypot(1, FLATNESS) + 1.5, 1);
  });

  it('is not moved at the level of the folds, and by a lean of one by the toe’s height on its top', () => {
    const cylinder = { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: [10 * Math.hypot(1, FLATNESS)], centreMm: 40 - 8 * AT_FOLD, centreSlope: 0 };
    // A lens very far away at 45°: all of the toe is seen under the same lean.
    const relief = { cylinder, lens: { acrossMm: -1e7, downMm: 0, heightMm: 1e7 }, shape: SHAPE };
    const topMm = 8 * (1 - AT_FOLD);
    expect(straightenPoint(relief, { acrossMm: 40 + topMm, downMm: 0 }).acrossMm).toBeCloseTo(40, 3);
    expect(straightenPoint(relief, { acrossMm: 47.2, downMm: 0 }).acrossMm).toBeCloseTo(47.2, 3);
    expect(leanPoint(relief, { acrossMm: 40, downMm: 0 }).acrossMm).toBeCloseTo(40 + topMm, 3);
  });

  it('is found again by the way back, across and along the toe', () => {
    const { relief, flat } = photographed(SHAPE, 10, 0.4, 22);
    const there = leanPoint(relief, flat);
    expect(Math.hypot(there.acrossMm - flat.acrossMm, there.downMm - flat.downMm)).toBeGreaterThan(0.5);
    const back = straightenPoint(relief, there);
    expect(back.acrossMm).toBeCloseTo(flat.acrossMm, 4);
    expect(back.downMm).toBeCloseTo(flat.downMm, 4);
  });
});

describe('before and behind the toe’s outline', () => {
  // Half widths of 8 mm at its tip and 10 mm at its end, seen from straight above.
  const cylinder = { axis: { across: 0, down: 1 }, startMm: 10, halfWidthsMm: [8, 9, 10], centreMm: 40, centreSlope: 0 };
  const facing = (acrossMm: number, downMm: number) => facingLens({ cylinder, lens: { acrossMm: 40, downMm, heightMm: 1e6 } }, { acrossMm, downMm });

  it('has the width of its nearest slice, and the skin ends at it', () => {
    expect([facing(47.9, 2), facing(48.1, 2)]).toEqual(['seen', 'besideToe']);
    expect([facing(48.9, 10.5), facing(49.1, 10.5)]).toEqual(['seen', 'besideToe']);
    expect([facing(49.9, 30), facing(50.1, 30)]).toEqual(['seen', 'besideToe']);
  });

  it('is hidden where the far side turns away under a lens on the other one', () => {
    const aside = { acrossMm: 40 - 1e6, downMm: 10, heightMm: 1e6 };
    const wide = { ...cylinder, halfWidthsMm: [10 * Math.hypot(1, FLATNESS)], centreMm: 40 - 8 * AT_FOLD };
    // On x²/W² + z²/(kW)² = 1 a line of sight at 45° touches at x / W = 1 / √(1 + k²) = 0.7809.
    const at = (acrossMm: number) => facingLens({ cylinder: wide, lens: aside, shape: SHAPE }, { acrossMm, downMm: 10 });
    expect([at(47.7), at(47.9), at(32.3)]).toEqual(['seen', 'hidden', 'seen']);
  });
});

describe('outlines laid straight', () => {
  const above = { acrossMm: 44, downMm: 27, heightMm: 250 };

  it('move toward the lens’s foot wherever skin stands higher than the folds, all but the toe’s own', () => {
    const straight = straightenOutlines(SIMPLE.outlines, { ...above, acrossMm: -60 });
    // The plate's right side lies 3.5 mm from the toe's middle, above the folds: it is seen too far from the lens.
    const seen = SIMPLE.outlines.nailPlate!.rings[0].ring[1].acrossMm;
    const lies = straight.nailPlate!.rings[0].ring[1].acrossMm;
    expect(lies).toBeLessThan(seen - 0.5);
    expect(straight.cutEdge!.line[0].acrossMm).toBeCloseTo(lies, 9);
    expect(straight.cutEdge!.boundaryUMm).toBe(SIMPLE.outlines.cutEdge!.boundaryUMm);
    expect(straight.nailFoldMargin!.line[0]).toEqual(straight.marginLateral![0]);
    expect(straight.toe).toBe(SIMPLE.outlines.toe);
  });

  it('stay what they were without the toe’s outline, and nothing stays nothing', () => {
    const noToe = { ...SIMPLE.outlines, toe: null };
    expect(straightenOutlines(noToe, { ...above, acrossMm: -60 })).toBe(noToe);
    const onlyToe = { ...NOTHING, toe: SIMPLE.outlines.toe };
    expect(straightenOutlines(onlyToe, above)).toEqual(onlyToe);
  });
});
