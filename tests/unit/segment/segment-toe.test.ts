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
    // 4 × 14 mm; the index's say rounds its corners off a little.
    expect(Math.abs(areaMm2(found.erythema?.rings ?? []) - 56)).toBeLessThan(2);
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

describe('pieces beside the main one', () => {
  it('count as redness only when they come within a millimetre of the margin or of the wound at it', () => {
    const [main] = SQUARE_TOE.erythema;
    const count = (...others: readonly RingMm[]) => {
      const fields = drawFields(GRID, { ...SQUARE_TOE, erythema: [main, ...others] });
      return segmentToe(squareToeColours(fields, 10), fields).erythema?.rings.length;
    };
    expect(count()).toBe(1);
    // Beside the proximal fold, half a millimetre below it; then an island in the middle of the toe.
    expect(count(box(41, 38.5, 44, 41))).toBe(2);
    expect(count(box(38, 48, 42, 52))).toBe(1);
  });

  it('are no redness when they are specks', () => {
    const fields = drawFields(GRID, { ...SQUARE_TOE, erythema: [box(46.2, 30, 46.9, 30.7)] });
    expect(segmentToe(squareToeColours(fields, 10), fields).erythema).toBeNull();
  });

  it('are no wound of the fold when they lie more than 5 mm from it', () => {
    const fields = drawFields(GRID, { ...SQUARE_TOE, raw: [box(36, 50, 39, 53)] });
    expect(segmentToe(squareToeColours(fields, 10), fields).raw).toBeNull();
  });
});

describe('the step of the index across the outline', () => {
  const fields = drawFields(GRID, SQUARE_TOE);
  const evidenceOf = (stepEi: number) => segmentToe(squareToeColours(fields, stepEi), fields).evidence;

  it('is found as large as it was planted, within a tenth', () => {
    for (const stepEi of [4, 8, 16]) expect(Math.abs((evidenceOf(stepEi)?.edgeStepEi ?? 0) / stepEi - 1)).toBeLessThan(0.1);
  });

  it('supports the region at 8 EI, and does not at 0 EI or where the region is paler than its surroundings', () => {
    expect(evidenceOf(8)?.verdict).toBe('supported');
    for (const stepEi of [0, -8]) expect(evidenceOf(stepEi)?.verdict).not.toBe('supported');
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
