import { describe, expect, it } from 'vitest';
import { segmentToe } from '../../../lib/segment/segment-toe';
import type { TissueFields } from '../../../lib/segment/segmentation';
import type { RingMm } from '../../../lib/units';
import { drawFields } from './draw-fields';
import { box, GRID, SQUARE_TOE, squareToeColours } from './square-toe';

function areaMm2(rings: readonly { ring: RingMm; hole: boolean }[]): number {
  return rings.reduce((sum, { ring, hole }) => {
    const twice = ring.reduce((s, p, i) => {
      const q = ring[(i + 1) % ring.length];
      return s + p.acrossMm * q.downMm - q.acrossMm * p.downMm;
    }, 0);
    return sum + (hole ? -1 : 1) * Math.abs(twice / 2);
  }, 0);
}

describe('outlines from tissue fields', () => {
  const fields = drawFields(GRID, SQUARE_TOE);
  const found = segmentToe(squareToeColours(fields, 10), fields);

  it('have the area of the shapes that the fields were drawn from', () => {
    expect(areaMm2(found.nailPlate?.rings ?? [])).toBeCloseTo(104, -0.5);
    // The outline of redness lies at a level below one half, a little outside the drawn edge.
    expect(areaMm2(found.erythema?.rings ?? [])).toBeGreaterThan(55);
    expect(areaMm2(found.erythema?.rings ?? [])).toBeLessThan(60);
  });

  it('put the margin on the side of the groove, along the side and half of the proximal fold', () => {
    expect(found.treatedSide).toBe('right');
    const line = found.nailFoldMargin?.line ?? [];
    const off = line.map((p) => Math.min(Math.abs(p.acrossMm - 46), Math.abs(p.downMm - 38)));
    expect(Math.max(...off)).toBeLessThan(0.5);
    expect(line[0].downMm).toBeLessThan(27);
  });

  it('put the cut edge on the plate, a groove away from the lateral margin', () => {
    for (const p of found.cutEdge?.line ?? []) expect(Math.abs(p.acrossMm - 44)).toBeLessThan(0.3);
    expect(found.cutEdge?.line.length).toBeGreaterThan(5);
  });

  it('are supported by a step of the index that was planted', () => {
    expect(found.evidence?.verdict).toBe('supported');
    expect(found.evidence?.edgeStepEi).toBeGreaterThan(8);
  });
});

describe('what the picture does not support', () => {
  it('is not called supported: a region without any step of the index', () => {
    const fields = drawFields(GRID, SQUARE_TOE);
    expect(segmentToe(squareToeColours(fields, 0), fields).evidence?.verdict).not.toBe('supported');
  });

  it('is not counted: redness that stays more than a millimetre away from the treated fold', () => {
    const far = drawFields(GRID, { ...SQUARE_TOE, erythema: [box(46, 50, 50, 56)] });
    expect(segmentToe(squareToeColours(far, 10), far).erythema).toBeNull();
  });

  it('is null and never an empty outline, when the fields show nothing', () => {
    const none = new Float32Array(GRID.widthPx * GRID.heightPx);
    const fields: TissueFields = { grid: GRID, toe: none, nailPlate: none, groove: none, nailUnit: none, foldMargin: none, raw: none, macerated: none, erythema: none };
    const found = segmentToe(squareToeColours(drawFields(GRID, SQUARE_TOE), 10), fields);
    expect([found.toe, found.nailPlate, found.nailFoldMargin, found.erythema, found.raw, found.reference]).toEqual([null, null, null, null, null, null]);
  });
});
