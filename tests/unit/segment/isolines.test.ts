import { contours } from 'd3-contour';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isolines, type Isoline } from '../../../lib/segment/isolines';

const grid = (widthPx: number, heightPx: number) => ({ originAcrossMm: 0, originDownMm: 0, pxPerMm: 1, widthPx, heightPx });

describe('lines of one level', () => {
  it('go round a single pixel half way to its neighbours', () => {
    const [line] = isolines(grid(3, 3), Float32Array.of(0, 0, 0, 0, 1, 0, 0, 0, 0), 0.5);
    expect(line.hole).toBe(false);
    expect(line.areaPx).toBeCloseTo(0.5, 12);
    expect(line.points).toHaveLength(4);
  });

  it('keep pixels apart that touch by a corner only', () => {
    expect(isolines(grid(2, 2), Float32Array.of(1, 0, 0, 1), 0.5)).toHaveLength(2);
    expect(isolines(grid(2, 2), Float32Array.of(0, 1, 1, 0), 0.5)).toHaveLength(2);
  });

  it('close along the border of the field, half a pixel outside', () => {
    const [line] = isolines(grid(2, 2), Float32Array.of(1, 1, 1, 1), 0.5);
    expect(Math.min(...line.points.map(({ row }) => row))).toBe(-0.5);
    expect(Math.max(...line.points.map(({ column }) => column))).toBe(1.5);
  });

  it('are the lines of a reference library (d3-contour 4) on any field', () => {
    const field = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 })).chain(([widthPx, heightPx]) =>
      fc.record({
        widthPx: fc.constant(widthPx),
        heightPx: fc.constant(heightPx),
        values: fc.array(fc.integer({ min: 0, max: 20 }), { minLength: widthPx * heightPx, maxLength: widthPx * heightPx }),
      }),
    );
    fc.assert(
      fc.property(field, ({ widthPx, heightPx, values }) => {
        const ours = isolines(grid(widthPx, heightPx), Float32Array.from(values, (v) => v / 20), 0.476);
        const shape = contours().size([widthPx, heightPx]).contour(values.map((v) => Math.fround(v / 20)), 0.476);
        const theirs = shape.coordinates.flatMap((polygon) => polygon.map((ring, i) => ({ hole: i > 0, points: ring.slice(0, -1) })));
        expect(ours.map(asText).sort()).toEqual(theirs.map(({ hole, points }) => asText({ hole, points: points.map(([x, y]) => ({ row: y - 0.5, column: x - 0.5 })) })).sort());
      }),
      { numRuns: 300 },
    );
  });
});

/** A line as the sorted list of its points: where it starts does not matter. */
function asText({ hole, points }: Pick<Isoline, 'hole' | 'points'>): string {
  return `${hole} ${points.map(({ row, column }) => `${row.toFixed(6)},${column.toFixed(6)}`).map((one) => one.replaceAll('-0.000000', '0.000000')).sort().join(' ')}`;
}
