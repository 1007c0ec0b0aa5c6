import { describe, expect, it } from 'vitest';
import { joinedCells } from '../../../lib/measure/joined-cells';
import { largestRing } from '../../../lib/measure/largest-ring';
import { mapRings } from '../../../lib/measure/map-rings';
import { rednessMask } from '../../../lib/measure/redness-mask';
import { regionEdge } from '../../../lib/measure/region-edge';
import { regionMask } from '../../../lib/measure/region-mask';
import { regionRefusal } from '../../../lib/measure/region-refusal';
import { region } from './simple-toe';
import { circleRing, rectangleRing } from './shapes';

/** Pixel centres from 20 to 39.9 mm across and from 5 to 19.9 mm down. */
const GRID = { originAcrossMm: 20, originDownMm: 5, pxPerMm: 10, widthPx: 200, heightPx: 150 };
const refusal = (...sides: Parameters<typeof rectangleRing>) => regionRefusal(region(rectangleRing(...sides)), GRID);

describe('a region on the map', () => {
  it.each<[string, Parameters<typeof rectangleRing>]>([
    ['left', [20.05, 8, 3, 3]],
    ['right', [36.85, 8, 3, 3]],
    ['upper', [28, 5.05, 3, 3]],
    ['lower', [28, 16.85, 3, 3]],
  ])('is cut off where its edge runs within a pixel of the %s border', (_, sides) => {
    expect(refusal(...sides)).toBe('outOfView');
  });

  it('is in view two pixels from every border, and where it only touches one over half a millimetre', () => {
    expect(refusal(20.2, 5.2, 19.5, 14.5)).toBeNull();
    expect(refusal(20.05, 8, 3, 0.5)).toBeNull();
  });

  it('is no region without an area', () => {
    expect(regionRefusal(null, GRID)).toBe('noRegionFound');
    expect(refusal(25, 8, 3, 0)).toBe('noRegionFound');
  });

  it('does not come in again on the left where it leaves on the right, nor on top where it leaves below', () => {
    const at = (acrossMm: number, downMm: number) => regionMask([{ ring: circleRing(acrossMm, downMm, 2), hole: false }], GRID, 1);
    const pixels = (mask: Uint8Array) => mask.reduce((sum, one) => sum + one, 0);
    // Middles on the border pixels themselves: half of each disc of 3 mm is seen, on either side as much.
    expect(pixels(at(39.9, 12))).toBe(pixels(at(20, 12)));
    expect(pixels(at(30, 19.9))).toBe(pixels(at(30, 5)));
    expect(pixels(at(39.9, 12)) / (50 * Math.PI * 9)).toBeCloseTo(1, 1);
  });
});

it('without redness nothing is taken from, whatever else was outlined', () => {
  const only = { erythema: null, nailPlate: region(rectangleRing(25, 8, 3, 3)), raw: null, macerated: null };
  expect(rednessMask(only, GRID, 1)).toEqual(new Uint8Array(200 * 150));
});

describe('rings', () => {
  const [small, large, smallest] = [rectangleRing(0, 0, 2, 2), rectangleRing(5, 5, 3, 3), rectangleRing(0, 0, 0.5, 0.5)];
  const outer = (ring: typeof small) => ({ ring, hole: false });

  it('have a largest among the outer ones, wherever it stands and however small it is', () => {
    expect(largestRing([outer(small), outer(large)])).toBe(large);
    expect(largestRing([outer(large), outer(small)])).toBe(large);
    expect(largestRing([outer(small), { ring: large, hole: true }])).toBe(small);
    expect(largestRing([outer(smallest)])).toBe(smallest);
    expect(largestRing([{ ring: large, hole: true }])).toBeNull();
  });

  it('are closed when they are spaced anew: twelve points on a triangle of 3, 4 and 5', () => {
    const triangle = [[0, 0], [3, 0], [0, 4]].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
    expect(mapRings([outer(triangle)], (line) => line, 1)[0].ring).toHaveLength(12);
  });

  it('of a single point have no edge', () => {
    expect(regionEdge([outer(rectangleRing(3, 3, 0, 0)), outer(small)])).toHaveLength(1);
  });
});

describe('cells of a lattice', () => {
  it('hang together upward and to the left as well', () => {
    expect(joinedCells(Uint8Array.of(0, 1, 0, 1, 1, 0), 3)).toEqual([[1, 4, 3]]);
    expect(joinedCells(Uint8Array.of(1, 0, 1, 1, 1, 1), 3)).toEqual([[0, 3, 4, 5, 2]]);
  });

  it('do not hang together from one row’s end to the next row’s beginning, nor beyond the last row', () => {
    expect(joinedCells(Uint8Array.of(1, 0, 0, 1, 0, 1, 1, 0, 0), 3)).toEqual([[0, 3, 6], [5]]);
    expect(joinedCells(Uint8Array.of(0, 0, 1, 1, 0, 0), 3)).toEqual([[2], [3]]);
  });
});
