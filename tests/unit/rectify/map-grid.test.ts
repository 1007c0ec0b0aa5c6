import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { scaleGeometry } from '../../../lib/card/scale-geometry';
import { gridPoint } from '../../../lib/rectify/grid-point';
import { mapWindow } from '../../../lib/rectify/map-window';
import { nailPlace, notchFrame } from '../../../lib/rectify/notch-frame';
import { toeGrid } from '../../../lib/rectify/toe-grid';

describe('the notch’s own frame', () => {
  it('has its axis in the middle of the card and its apex at the top of the widest cut line', () => {
    // Half circle of 17 mm about (42.8, 35): apex at 35 − 17.
    const frame = notchFrame(OWN_CARD);
    expect(frame.axisAcrossMm).toBeCloseTo(42.8, 9);
    expect(frame.apexDownMm).toBeCloseTo(18, 9);
    expect(frame.widthMm).toBeCloseTo(34, 9);
  });

  it('shrinks with a card that was printed too small', () => {
    expect(notchFrame(scaleGeometry(OWN_CARD, 0.94)).widthMm).toBeCloseTo(31.96, 9);
  });

  it('expects the nail 11 mm below the apex, inside the ring of fiducials', () => {
    expect(nailPlace(OWN_CARD)).toEqual({ acrossMm: expect.closeTo(42.8, 9), downMm: expect.closeTo(29, 9) });
  });
});

describe('the grid of the millimetre map', () => {
  it('is 44 × 56 mm with the axis between its middle columns', () => {
    const grid = toeGrid(OWN_CARD);
    expect([grid.widthPx, grid.heightPx, grid.pxPerMm]).toEqual([352, 448, 8]);
    const middle = gridPoint(grid, 0, (grid.widthPx - 1) / 2);
    expect(middle.acrossMm).toBeCloseTo(42.8, 9);
    expect(middle.downMm).toBeCloseTo(12, 9);
  });

  it('counts pixel centres: the first is the origin, the eighth lies one millimetre further', () => {
    const grid = toeGrid(OWN_CARD);
    expect(gridPoint(grid, 0, 0)).toEqual({ acrossMm: grid.originAcrossMm, downMm: grid.originDownMm });
    expect(gridPoint(grid, 8, 8).acrossMm - grid.originAcrossMm).toBeCloseTo(1, 12);
    expect(gridPoint(grid, 8, 8).downMm - grid.originDownMm).toBeCloseTo(1, 12);
  });

  it('keeps its axis at any resolution', () => {
    for (const pxPerMm of [4, 7.3, 12, 18]) {
      const grid = toeGrid(OWN_CARD, pxPerMm);
      expect(gridPoint(grid, 0, (grid.widthPx - 1) / 2).acrossMm).toBeCloseTo(42.8, 9);
    }
  });

  it('refuses a resolution that is not positive, with the value', () => {
    for (const wrong of [0, -8, NaN]) expect(() => mapWindow(notchFrame(OWN_CARD), wrong)).toThrow(new RegExp(`mapWindow.*received ${wrong}`));
  });
});
