import { describe, expect, it } from 'vitest';
import { type IndexMap, indexDifference } from '../../../lib/measure/index-difference';
import { joinedCells } from '../../../lib/measure/joined-cells';
import type { PointMm } from '../../../lib/units';

const GRID = { originAcrossMm: 0, originDownMm: 0, pxPerMm: 8, widthPx: 240, heightPx: 320 };
const MARGIN = [{ acrossMm: 15, downMm: 8 }, { acrossMm: 15, downMm: 14 }, { acrossMm: 15, downMm: 20 }];
const pixels = GRID.widthPx * GRID.heightPx;
const placeOf = (i: number): PointMm => ({ acrossMm: (i % GRID.widthPx) / GRID.pxPerMm, downMm: Math.floor(i / GRID.widthPx) / GRID.pxPerMm });

/** Mottled skin everywhere, reference skin behind the nail, and redness in a band beside the margin. */
function skinWith({ bandMm = 0, stepEi = 0, offsetEi = 0, shift = { acrossMm: 0, downMm: 0 }, noiseEi = 0.3 }): IndexMap {
  let seed = 1 + Math.round(100 * offsetEi);
  const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647 - 0.5;
  const erythemaIndex = new Float32Array(pixels).map((_, i) => {
    const { acrossMm, downMm } = placeOf(i);
    const [a, d] = [acrossMm - shift.acrossMm, downMm - shift.downMm];
    const mottled = 3 * Math.sin(a / 3) * Math.cos(d / 4);
    const red = a > 15 && a < 15 + bandMm && d > 8 && d < 20 ? stepEi : 0;
    return 20 + offsetEi + mottled + red + noiseEi * random();
  });
  const plain = new Uint8Array(pixels).map((_, i) => (placeOf(i).downMm > 26 ? 1 : 0));
  return { grid: GRID, erythemaIndex, skin: new Uint8Array(pixels).fill(1), plain };
}
const same = (point: PointMm) => point;

describe('two photos of one skin', () => {
  it('do not differ, however mottled it is and whatever the light adds to all of it', () => {
    const difference = indexDifference(skinWith({ offsetEi: 4 }), skinWith({}), same, MARGIN);
    expect(difference?.redderMm2).toBe(0);
    expect(difference?.reachMm).toBeNull();
  });

  it('show redness that has come since, where it is and as large as it is', () => {
    const difference = indexDifference(skinWith({ bandMm: 4, stepEi: 5, offsetEi: 2 }), skinWith({}), same, MARGIN);
    expect(Math.abs((difference?.redderMm2 ?? 0) - 48)).toBeLessThan(10);
    expect(Math.abs((difference?.reachMm ?? 0) - 4)).toBeLessThan(0.8);
  });

  it('show what has grown and not what was there before', () => {
    const difference = indexDifference(skinWith({ bandMm: 6, stepEi: 5 }), skinWith({ bandMm: 3, stepEi: 5 }), same, MARGIN);
    expect(Math.abs((difference?.redderMm2 ?? 0) - 36)).toBeLessThan(9);
  });

  it('say nothing where redness has faded', () => {
    expect(indexDifference(skinWith({}), skinWith({ bandMm: 4, stepEi: 5 }), same, MARGIN)?.redderMm2).toBe(0);
  });

  it('are compared where the toe lay then', () => {
    const moved = skinWith({ shift: { acrossMm: 3, downMm: -2 } });
    const toEarlier = ({ acrossMm, downMm }: PointMm) => ({ acrossMm: acrossMm + 3, downMm: downMm - 2 });
    expect(indexDifference(skinWith({}), moved, toEarlier, MARGIN)?.redderMm2).toBe(0);
    expect(indexDifference(skinWith({ noiseEi: 0.05 }), skinWith({ shift: { acrossMm: 9, downMm: 7 }, noiseEi: 0.05 }), same, MARGIN)?.noiseEi).toBeGreaterThan(1);
  });

  it('cannot be compared without reference skin on both', () => {
    const bare = { ...skinWith({}), plain: new Uint8Array(pixels) };
    expect(indexDifference(skinWith({}), bare, same, MARGIN)).toBeNull();
  });
});

describe('cells that hang together', () => {
  it('are one piece by their sides and two by their corners', () => {
    expect(joinedCells(Uint8Array.of(1, 1, 0, 0, 0, 1), 3)).toHaveLength(2);
    expect(joinedCells(Uint8Array.of(1, 1, 0, 0, 1, 1), 3)).toEqual([[0, 1, 4, 5]]);
    expect(joinedCells(Uint8Array.of(0, 0, 1, 1, 0, 0), 3)).toHaveLength(2);
  });
});
