import { describe, expect, it } from 'vitest';
import { traceNailFoldMargin } from '../../../lib/segment/nail-fold-margin';
import type { TissueFields, ToldSide } from '../../../lib/segment/segmentation';
import { tracePieces } from '../../../lib/segment/trace-pieces';
import type { LineMm } from '../../../lib/units';
import { drawFields } from './draw-fields';
import { GRID, SQUARE_TOE } from './square-toe';

const FIELDS = drawFields(GRID, SQUARE_TOE);
const trace = (fields: TissueFields, told: ToldSide | null = null) =>
  traceNailFoldMargin(fields, tracePieces(GRID, fields.nailUnit, 0.5, 10)[0].outer, told);

/** The margin's field as heard along some lines, softer or louder. */
function withMargins(...lines: readonly { readonly line: LineMm; readonly loud: number }[]): TissueFields {
  const planes = lines.map(({ line, loud }) => drawFields(GRID, { ...SQUARE_TOE, margin: line }).foldMargin.map((value) => loud * value));
  return { ...FIELDS, foldMargin: FIELDS.foldMargin.map((_, i) => Math.max(...planes.map((plane) => plane[i]))) };
}

const RIGHT: LineMm = SQUARE_TOE.margin;
const LEFT: LineMm = [{ acrossMm: 36, downMm: 25 }, { acrossMm: 36, downMm: 38 }, { acrossMm: 41, downMm: 38 }];
const tip = (line: LineMm) => Math.min(...line.map(({ downMm }) => downMm));

describe('the treated margin', () => {
  it('is where the strip of plate is missing, even where the other fold speaks a little louder', () => {
    expect(trace(withMargins({ line: RIGHT, loud: 0.6 }, { line: LEFT, loud: 0.8 }))?.side).toBe('right');
  });

  it('is where its field speaks, when no groove tells', () => {
    const healed = { ...withMargins({ line: LEFT, loud: 0.9 }), groove: new Float32Array(FIELDS.groove.length) };
    expect(trace(healed)?.side).toBe('left');
  });

  it('is on the side that the record tells, unless margin and groove both speak against it: records can be wrong', () => {
    expect(trace(withMargins({ line: RIGHT, loud: 1 }, { line: LEFT, loud: 0.8 }), 'left')?.side).toBe('left');
    expect(trace(FIELDS, 'left')?.side).toBe('right');
  });

  it('is not taken on either side where nothing tells which: no groove, no record, and two folds that speak alike', () => {
    const even = { ...withMargins({ line: RIGHT, loud: 0.8 }, { line: LEFT, loud: 0.8 }), groove: new Float32Array(FIELDS.groove.length) };
    expect(trace(even)).toBeNull();
    expect(trace(even, 'left')?.side).toBe('left');
    expect(trace(even, 'both')).not.toBeNull();
  });

  it('goes on to the middle of the proximal fold, where its field falls silent before', () => {
    const found = trace(withMargins({ line: [RIGHT[0], { acrossMm: 46, downMm: 37 }], loud: 0.9 }));
    expect(Math.min(...(found?.line ?? []).map(({ acrossMm }) => acrossMm))).toBeLessThan(41.6);
  });

  it('goes on along the groove where raw tissue has grown over it and its field is silent', () => {
    const proximal = withMargins({ line: [{ acrossMm: 46, downMm: 33 }, RIGHT[1], RIGHT[2]], loud: 0.9 });
    const found = trace(proximal);
    expect(tip(found?.line ?? [])).toBeLessThan(26.5);
    expect(found?.support).toBeLessThan(0.75);
  });

  it('ends where its field ends, when less than a rounded end of groove goes on', () => {
    const found = trace(withMargins({ line: [{ acrossMm: 46, downMm: 27.5 }, RIGHT[1], RIGHT[2]], loud: 0.9 }));
    expect(tip(found?.line ?? [])).toBeGreaterThan(26.5);
  });
});
