import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { toeGrid } from '../../../lib/rectify/toe-grid';
import { segmentToe } from '../../../lib/segment/segment-toe';
import type { ToeColours } from '../../../lib/segment/toe-colours';
import type { TissueFields } from '../../../lib/segment/segmentation';
import type { RingMm } from '../../../lib/units';
import { drawFields, type KnownOutlines } from './draw-fields';

const grid = toeGrid(OWN_CARD);
const box = (left: number, top: number, right: number, bottom: number): RingMm => [
  { acrossMm: left, downMm: top },
  { acrossMm: right, downMm: top },
  { acrossMm: right, downMm: bottom },
  { acrossMm: left, downMm: bottom },
];

/** A square toe: plate 36–46, a groove of 2 mm to its right, redness 4 mm wide beside the groove. */
const toe: KnownOutlines = {
  toe: [box(32, 22, 54, 66)],
  nailPlate: [box(36, 25, 44, 38)],
  groove: [box(44, 25, 46, 38)],
  raw: [box(44.5, 28, 46, 34)],
  macerated: [],
  erythema: [box(46, 26, 50, 40)],
  margin: [
    { acrossMm: 46, downMm: 25 },
    { acrossMm: 46, downMm: 38 },
    { acrossMm: 41, downMm: 38 },
  ],
};

/** Evenly lit skin whose erythema index stands `stepEi` higher inside the redness. */
function colours(fields: TissueFields, stepEi: number): ToeColours {
  const pixels = grid.widthPx * grid.heightPx;
  const ei = new Float32Array(pixels).map((_, i) => 18 + stepEi * fields.erythema[i] + 0.6 * Math.sin(i * 12.9898));
  const green = new Float32Array(pixels).fill(0.3);
  const red = ei.map((value) => 0.3 * 10 ** (value / 100));
  return { grid, red, green, blue: new Float32Array(pixels).fill(0.22), seen: new Uint8Array(pixels).fill(1), erythemaIndex: ei };
}

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
  const fields = drawFields(grid, toe);
  const found = segmentToe(colours(fields, 10), fields);

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
    const fields = drawFields(grid, toe);
    expect(segmentToe(colours(fields, 0), fields).evidence?.verdict).not.toBe('supported');
  });

  it('is not counted: redness that stays more than a millimetre away from the treated fold', () => {
    const far = drawFields(grid, { ...toe, erythema: [box(46, 50, 50, 56)] });
    expect(segmentToe(colours(far, 10), far).erythema).toBeNull();
  });

  it('is null and never an empty outline, when the fields show nothing', () => {
    const none = new Float32Array(grid.widthPx * grid.heightPx);
    const fields: TissueFields = { grid, toe: none, nailPlate: none, groove: none, nailUnit: none, foldMargin: none, raw: none, macerated: none, erythema: none };
    const found = segmentToe(colours(drawFields(grid, toe), 10), fields);
    expect([found.toe, found.nailPlate, found.nailFoldMargin, found.erythema, found.raw, found.reference]).toEqual([null, null, null, null, null, null]);
  });
});
