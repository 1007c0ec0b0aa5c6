import { describe, expect, it } from 'vitest';
import { ringMask } from '../../../lib/rectify/ring-mask';
import { outlinesOf } from '../../../lib/segment/outlines-of';
import { tracePieces } from '../../../lib/segment/trace-pieces';
import { GRID } from './square-toe';

const pixels = GRID.widthPx * GRID.heightPx;
/** A field that falls straight through one half at the edge of a shape: `insideMm` is the distance to it, positive inside. */
function field(insideMm: (acrossMm: number, downMm: number) => number): Float32Array {
  return new Float32Array(pixels).map((_, i) => {
    const acrossMm = GRID.originAcrossMm + (i % GRID.widthPx) / GRID.pxPerMm;
    const downMm = GRID.originDownMm + Math.floor(i / GRID.widthPx) / GRID.pxPerMm;
    return Math.min(1, Math.max(0, 0.5 + insideMm(acrossMm, downMm)));
  });
}
const disc = (radiusMm: number) => field((a, d) => radiusMm - Math.hypot(a - 43.3, d - 40.7));
const boxed = (half: number) => field((a, d) => half - Math.max(Math.abs(a - 43.3), Math.abs(d - 40.7)));
const ring = field((a, d) => 1.5 - Math.abs(Math.hypot(a - 43.3, d - 40.7) - 6));

describe('outlines between pixels', () => {
  it.each([
    ['a disc of radius 1.2 mm', disc(1.2), Math.PI * 1.2 ** 2],
    ['a disc of radius 7 mm', disc(7), Math.PI * 7 ** 2],
    ['a square of 9 mm', boxed(4.5), 81],
    ['a ring 3 mm wide, its hole left out', ring, Math.PI * (7.5 ** 2 - 4.5 ** 2)],
  ])('have the area of %s within 1 %%', (_, plane, areaMm2) => {
    const pieces = tracePieces(GRID, plane, 0.5, 0.1);
    expect(pieces).toHaveLength(1);
    expect(Math.abs(pieces[0].areaMm2 / areaMm2 - 1)).toBeLessThan(0.01);
  });

  it('lie where the shape lies, to a hundredth of a millimetre', () => {
    for (const { acrossMm, downMm } of tracePieces(GRID, disc(7), 0.5, 0.1)[0].outer) {
      expect(Math.abs(Math.hypot(acrossMm - 43.3, downMm - 40.7) - 7)).toBeLessThan(0.01);
    }
  });

  it('know a hole from a piece', () => {
    const [piece] = tracePieces(GRID, ring, 0.5, 0.1);
    expect(piece.holes).toHaveLength(1);
    const radius = (one: { acrossMm: number; downMm: number }) => Math.hypot(one.acrossMm - 43.3, one.downMm - 40.7);
    expect(radius(piece.outer[0])).toBeCloseTo(7.5, 1);
    expect(radius(piece.holes[0][0])).toBeCloseTo(4.5, 1);
  });

  it('come largest first, and leave out what is smaller than asked for', () => {
    const several = field((a, d) => Math.max(...[[30, 30, 1], [40, 40, 3], [55, 60, 0.4]].map(([x, y, r]) => r - Math.hypot(a - x, d - y))));
    const areas = tracePieces(GRID, several, 0.5, 1).map(({ areaMm2 }) => areaMm2);
    expect(areas).toHaveLength(2);
    expect(areas[0]).toBeCloseTo(Math.PI * 9, 0);
    expect(areas[1]).toBeCloseTo(Math.PI, 1);
    expect(tracePieces(GRID, new Float32Array(pixels), 0.5, 0)).toEqual([]);
  });
});

describe('the mask of some outlines', () => {
  it.each([
    ['disc', disc(7), Math.PI * 49],
    ['ring', ring, Math.PI * (7.5 ** 2 - 4.5 ** 2)],
  ])('covers the area of a %s within 1 %%, with nothing in its hole', (_, plane, areaMm2) => {
    const mask = ringMask(outlinesOf(tracePieces(GRID, plane, 0.5, 0.1)), GRID);
    expect(Math.abs(mask.reduce((n, one) => n + one, 0) / GRID.pxPerMm ** 2 / areaMm2 - 1)).toBeLessThan(0.01);
    const wrong = mask.filter((one, i) => (one === 1) !== plane[i] > 0.5 && Math.abs(plane[i] - 0.5) > 0.01);
    expect(wrong).toHaveLength(0);
  });

  it('stays on the map when an outline leaves it', () => {
    const outer = [[0, 0], [500, 0], [500, 500], [0, 500]].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
    expect(ringMask([outer], GRID).every((one) => one === 1)).toBe(true);
  });
});
