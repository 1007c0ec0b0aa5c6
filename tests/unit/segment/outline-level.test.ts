import { describe, expect, it } from 'vitest';
import { ERYTHEMA_LEVEL, HIGHEST_LEVEL, LOWEST_LEVEL } from '../../../lib/segment/constants';
import { outlineLevel } from '../../../lib/segment/outline-level';

const GRID = { pxPerMm: 8, originAcrossMm: 0, originDownMm: 0, widthPx: 160, heightPx: 160 } as const;
const SIZE = GRID.widthPx * GRID.heightPx;
/** A round region in the middle; the model's field falls over 2 mm and has its own level on the circle of 4 mm. */
const MODEL_RADIUS_MM = 4;
const awayMm = (i: number): number => Math.hypot((i % GRID.widthPx) - 79.5, Math.floor(i / GRID.widthPx) - 79.5) / GRID.pxPerMm;
const soft = (insideMm: number, widthMm: number): number => 1 / (1 + Math.exp((-4.394 * insideMm) / widthMm));
const plane = (of: (away: number) => number): Float32Array => Float32Array.from({ length: SIZE }, (_, i) => of(awayMm(i)));

const field = plane((away) => soft(MODEL_RADIUS_MM - away, 2));
const inside = Uint8Array.from(field, (value) => (value > ERYTHEMA_LEVEL ? 1 : 0));
const skin = new Uint8Array(SIZE).fill(1);
/** An index of 10 units in the plateau that is half of it on a circle of its own. */
const index = (radiusMm: number, groundEi = 0) => plane((away) => groundEi + 10 * soft(radiusMm - away, 1.5));
const levelFor = (excessEi: Float32Array) => outlineLevel(GRID, field, inside, skin, excessEi);

describe('the level at which redness is outlined', () => {
  it('stays where the index agrees with the model', () => {
    expect(levelFor(index(4.05))).toBeGreaterThan(ERYTHEMA_LEVEL - 0.04);
    expect(levelFor(index(4.05))).toBeLessThan(ERYTHEMA_LEVEL + 0.04);
  });

  it('rises where the index falls off further in, and sinks where it goes further out', () => {
    const [wide, same, narrow, narrower] = [5, 4, 3.4, 2.8].map((radius) => levelFor(index(radius)));
    expect(wide).toBeLessThan(same);
    expect(narrow).toBeGreaterThan(same);
    expect(narrower).toBeGreaterThan(narrow);
  });

  it('does not care how red the skin around is, only what stands out from it', () => {
    expect(levelFor(index(3.4, 6))).toBeCloseTo(levelFor(index(3.4)), 2);
  });

  it('never leaves the bounds within which the outline is still the model’s', () => {
    expect(levelFor(index(1))).toBe(HIGHEST_LEVEL);
    expect(levelFor(plane((away) => (away < 6.4 ? 10 : 0)))).toBeGreaterThanOrEqual(LOWEST_LEVEL);
  });

  it('is the model’s own where no skin can be compared', () => {
    expect(outlineLevel(GRID, field, inside, new Uint8Array(SIZE), index(3))).toBe(ERYTHEMA_LEVEL);
    expect(levelFor(new Float32Array(SIZE).fill(NaN))).toBe(ERYTHEMA_LEVEL);
  });
});
