import { describe, expect, it } from 'vitest';
import { type IndexMap, indexDifference } from '../../../lib/measure/index-difference';
import type { PointMm } from '../../../lib/units';

/** 20 × 24 mm of even skin; that behind 16 mm is reference skin. The margin runs down at 8 mm across. */
const GRID = { originAcrossMm: 0, originDownMm: 0, pxPerMm: 4, widthPx: 80, heightPx: 96 };
const MARGIN = [{ acrossMm: 8, downMm: 4 }, { acrossMm: 8, downMm: 14 }];
type Where = (acrossMm: number, downMm: number) => boolean;
const inside = (left: number, top: number, width: number, height: number): Where => (across, down) => across >= left && across < left + width && down >= top && down < top + height;
const perPixel = (value: Where) => new Uint8Array(GRID.widthPx * GRID.heightPx).map((_, i) => Number(value((i % GRID.widthPx) / 4, Math.floor(i / GRID.widthPx) / 4)));

function skin({ red = inside(0, 0, 0, 0), byEi = 10, hidden = inside(0, 0, 0, 0), plain = inside(0, 16, 20, 8) }: { red?: Where; byEi?: number; hidden?: Where; plain?: Where }): IndexMap {
  const isRed = perPixel(red);
  return { grid: GRID, erythemaIndex: Float32Array.from(isRed, (one) => 20 + byEi * one), skin: perPixel((across, down) => !hidden(across, down)), plain: perPixel(plain) };
}
const same = (point: PointMm) => point;
const by = (acrossMm: number, downMm: number) => (point: PointMm) => ({ acrossMm: point.acrossMm + acrossMm, downMm: point.downMm + downMm });
const redderOn = (now: IndexMap, earlier = skin({}), toEarlier = same) => indexDifference(now, earlier, toEarlier, MARGIN);
/** A band of 4 × 8 mm beside the margin. Twice the least difference, so that its edge comes where it is half seen. */
const BAND = { red: inside(8, 5, 4, 8), byEi: 2 };

describe('redness that was not there before', () => {
  it('is as large as it is and reaches as far as it does, to half a step of the lattice', () => {
    const found = redderOn(skin(BAND));
    expect(found?.leastEi).toBe(1);
    expect(Math.abs((found?.redderMm2 ?? 0) - 32)).toBeLessThanOrEqual(3);
    expect(Math.abs((found?.reachMm ?? 0) - 4)).toBeLessThanOrEqual(0.25);
  });

  it('is no speck of less than four square millimetres, even beside one that counts', () => {
    const speck = inside(4, 8, 1.5, 1.5);
    expect(redderOn(skin({ red: speck, byEi: 2 }))?.redderMm2).toBe(0);
    const both = redderOn(skin({ ...BAND, red: (across, down) => BAND.red(across, down) || speck(across, down) }));
    expect(both?.redderMm2).toBe(redderOn(skin(BAND))?.redderMm2);
  });

  it('comes within three millimetres of the margin, or is something else', () => {
    expect(redderOn(skin({ red: inside(10, 5, 5, 8) }))?.redderMm2).toBeGreaterThan(30);
    expect(redderOn(skin({ red: inside(12.5, 5, 5, 8) }))?.redderMm2).toBe(0);
    expect(redderOn(skin({ red: inside(8, 5, 2.5, 8) }))?.redderMm2).toBeGreaterThan(15);
  });

  it('is found out to the first row and the first column of the map', () => {
    const corner = indexDifference(skin({ red: inside(0, 0, 4, 8), byEi: 2 }), skin({}), same, [{ acrossMm: 0, downMm: 0 }, { acrossMm: 0, downMm: 10 }]);
    expect(Math.abs((corner?.redderMm2 ?? 0) - 32)).toBeLessThanOrEqual(1);
  });
});

describe('a place is compared', () => {
  it('only where both photos show its skin', () => {
    const half = inside(8, 5, 4, 4);
    const whole = redderOn(skin(BAND))?.redderMm2 ?? 0;
    expect(redderOn(skin({ ...BAND, hidden: half }))?.redderMm2).toBeCloseTo(whole / 2, -1);
    expect(redderOn(skin(BAND), skin({ hidden: half }))?.redderMm2).toBeCloseTo(whole / 2, -1);
    expect(redderOn(skin({ ...BAND, hidden: BAND.red }))?.redderMm2).toBe(0);
    expect(redderOn(skin(BAND), skin({ hidden: BAND.red }))?.redderMm2).toBe(0);
  });

  it('only where it lies on both, and not with the other end of the neighbouring row', () => {
    // The earlier photo is pale along one border; places that lie beyond the other one must not be held against it.
    const palest = (left: number) => skin({ red: inside(left, 0, 6, 16), byEi: -10 });
    const onMargin = (acrossMm: number) => [{ acrossMm, downMm: 1 }, { acrossMm, downMm: 15 }];
    expect(indexDifference(skin({}), palest(0), by(8, 0), onMargin(16))?.redderMm2).toBe(0);
    expect(indexDifference(skin({}), palest(14), by(-8, 0), onMargin(4))?.redderMm2).toBe(0);
    expect(indexDifference(skin({}), palest(0), by(0, 0), onMargin(3))?.redderMm2).toBeGreaterThan(60);
  });

  it('against at least twenty square millimetres of skin that is reference skin on both', () => {
    const twenty = inside(4, 16, 5, 4);
    expect(redderOn(skin({ plain: twenty }))).not.toBeNull();
    expect(redderOn(skin({ plain: inside(4, 16, 5, 3.5) }))).toBeNull();
    expect(redderOn(skin({ plain: inside(4, 16, 5, 1) }))).toBeNull();
    expect(redderOn(skin({ plain: inside(0, 0, 0, 0) }))).toBeNull();
    expect(redderOn(skin({}), skin({ plain: inside(0, 0, 0, 0) }))).toBeNull();
  });
});
