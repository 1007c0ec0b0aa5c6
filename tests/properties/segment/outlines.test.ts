import { describe, expect, it } from 'vitest';
import type { MapGrid } from '../../../lib/rectify/millimetre-map';
import { segmentToe } from '../../../lib/segment/segment-toe';
import type { Region, Segmentation, TissueFields } from '../../../lib/segment/segmentation';
import type { ToeColours } from '../../../lib/segment/toe-colours';
import { drawFields } from '../../unit/segment/draw-fields';
import { GRID, SQUARE_TOE, squareToeColours } from '../../unit/segment/square-toe';

const fields = drawFields(GRID, SQUARE_TOE);
const colours = squareToeColours(fields, 10);
const found = segmentToe(colours, fields);

type Plane = Float32Array | Uint8Array;
/** Every plane of a record changed, its grid replaced. */
function withPlanes<Record extends TissueFields | ToeColours>(record: Record, grid: MapGrid, change: <P extends Plane>(plane: P) => P): Record {
  return Object.fromEntries(Object.entries(record).map(([key, one]) => [key, key === 'grid' ? grid : change(one as Plane)])) as unknown as Record;
}

function areaMm2(region: Region | null): number {
  if (!region) throw new Error('a region is missing');
  return region.rings.reduce((sum, { ring, hole }) => {
    const twice = ring.reduce((s, p, i) => s + p.acrossMm * ring[(i + 1) % ring.length].downMm - ring[(i + 1) % ring.length].acrossMm * p.downMm, 0);
    return sum + (hole ? -1 : 1) * Math.abs(twice / 2);
  }, 0);
}

const REGIONS = ['toe', 'nailPlate', 'raw', 'erythema'] as const;
const areas = (one: Segmentation): number[] => REGIONS.map((key) => areaMm2(one[key]));

function expectNear(a: readonly number[], b: readonly number[], relative: number): void {
  a.forEach((value, i) => expect(Math.abs(value / b[i] - 1), REGIONS[i]).toBeLessThan(relative));
}

describe('the outlines of a toe', () => {
  it('are the same when the same toe is looked at again', () => {
    expect(segmentToe(colours, fields)).toEqual(found);
  });

  it('mirror with the picture: the other side is treated, every area is kept', () => {
    const mirror = <P extends Plane>(plane: P): P => plane.map((_, i) => plane[i - (i % GRID.widthPx) + GRID.widthPx - 1 - (i % GRID.widthPx)]) as P;
    const mirrored = segmentToe(withPlanes(colours, GRID, mirror), withPlanes(fields, GRID, mirror));
    expect([found.treatedSide, mirrored.treatedSide]).toEqual(['right', 'left']);
    expectNear(areas(mirrored), areas(found), 0.001);
    expect(mirrored.evidence?.verdict).toBe(found.evidence?.verdict);
    const middleMm = GRID.originAcrossMm + (GRID.widthPx - 1) / 2 / GRID.pxPerMm;
    const farthestMm = (one: Segmentation) => Math.max(...(one.nailFoldMargin?.line ?? []).map(({ acrossMm }) => Math.abs(acrossMm - middleMm)));
    expect(farthestMm(mirrored)).toBeCloseTo(farthestMm(found), 0.5);
  });

  it('move with the map: another place on the card, the same shapes', () => {
    const grid = { ...GRID, originAcrossMm: GRID.originAcrossMm + 3.7, originDownMm: GRID.originDownMm - 1.9 };
    const moved = segmentToe({ ...colours, grid }, { ...fields, grid });
    expectNear(areas(moved), areas(found), 1e-6);
    const [before, after] = [found, moved].map((one) => one.nailFoldMargin?.line[0] ?? { acrossMm: NaN, downMm: NaN });
    expect(after.acrossMm - before.acrossMm).toBeCloseTo(3.7, 5);
    expect(after.downMm - before.downMm).toBeCloseTo(-1.9, 5);
  });

  it('do not depend on how bright the photo is: half the light changes no area and no evidence', () => {
    const half = (plane: Float32Array) => plane.map((value) => value / 2);
    const dim = segmentToe({ ...colours, red: half(colours.red), green: half(colours.green), blue: half(colours.blue) }, fields);
    expect(areas(dim)).toEqual(areas(found));
    expect(dim.evidence?.edgeStepEi).toBeCloseTo(found.evidence?.edgeStepEi ?? NaN, 6);
  });
});

describe('what speaks for redness', () => {
  it('does not depend on the skin it lies on: 10 EI more everywhere is the same step', () => {
    const redder = { ...colours, erythemaIndex: colours.erythemaIndex.map((ei) => ei + 10) };
    expect(segmentToe(redder, fields).evidence?.edgeStepEi).toBeCloseTo(found.evidence?.edgeStepEi ?? NaN, 3);
  });

  it('grows with the step that was planted', () => {
    const steps = [0, 2, 4, 8, 16].map((stepEi) => segmentToe(squareToeColours(fields, stepEi), fields).evidence?.edgeStepEi ?? NaN);
    steps.slice(1).forEach((stepEi, i) => expect(stepEi).toBeGreaterThan(steps[i]));
  });
});
