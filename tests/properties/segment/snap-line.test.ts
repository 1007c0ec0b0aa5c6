import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MapGrid } from '../../../lib/rectify/millimetre-map';
import { cheapestPath, type EdgeCost } from '../../../lib/segment/cheapest-path';
import { type SetPoint, snapLine } from '../../../lib/segment/snap-line';
import type { PointPx } from '../../../lib/units';

const gridOf = (widthPx: number, heightPx: number): MapGrid => ({ originAcrossMm: 20, originDownMm: 10, pxPerMm: 8, widthPx, heightPx });
const [WIDTH, HEIGHT] = [9, 7];
const smallMap = fc.array(fc.double({ min: 0.05, max: 1, noNaN: true }), { minLength: WIDTH * HEIGHT, maxLength: WIDTH * HEIGHT }).map((cost): EdgeCost => ({ grid: gridOf(WIDTH, HEIGHT), cost: Float32Array.from(cost) }));
const pixel = fc.record({ row: fc.nat(HEIGHT - 1), column: fc.nat(WIDTH - 1) });

const stepCost = ({ grid, cost }: EdgeCost, a: PointPx, b: PointPx): number =>
  (Math.hypot(a.row - b.row, a.column - b.column) * (cost[a.row * grid.widthPx + a.column] + cost[b.row * grid.widthPx + b.column])) / 2;
const pathCost = (edge: EdgeCost, path: readonly PointPx[]): number => path.slice(1).reduce((sum, to, at) => sum + stepCost(edge, path[at], to), 0);

/** The least cost by another way: every pixel's cost is lowered by its neighbours' until none can be (Bellman 1958; Ford 1956). */
function leastCost(edge: EdgeCost, from: PointPx, to: PointPx): number {
  const costs = new Float64Array(WIDTH * HEIGHT).fill(Infinity);
  costs[from.row * WIDTH + from.column] = 0;
  for (let changed = true; changed; ) {
    changed = false;
    for (let i = 0; i < costs.length; i++) {
      for (let k = 0; k < costs.length; k++) {
        const [a, b] = [i, k].map((place) => ({ row: Math.floor(place / WIDTH), column: place % WIDTH }));
        if (i === k || Math.max(Math.abs(a.row - b.row), Math.abs(a.column - b.column)) > 1) continue;
        const total = costs[i] + stepCost(edge, a, b);
        if (total < costs[k] - 1e-12) {
          costs[k] = total;
          changed = true;
        }
      }
    }
  }
  return costs[to.row * WIDTH + to.column];
}

describe('the cheapest path', () => {
  it('costs no more than any other, found by another algorithm', () => {
    fc.assert(
      fc.property(smallMap, pixel, pixel, (edge, from, to) => {
        const path = cheapestPath(edge, from, to, WIDTH);
        expect(path[0]).toEqual(from);
        expect(path.at(-1)).toEqual(to);
        expect(pathCost(edge, path)).toBeCloseTo(leastCost(edge, from, to), 6);
      }),
      { numRuns: 40 },
    );
  });

  it('costs the same from either end', () => {
    fc.assert(
      fc.property(smallMap, pixel, pixel, (edge, from, to) => {
        expect(pathCost(edge, cheapestPath(edge, from, to, WIDTH))).toBeCloseTo(pathCost(edge, cheapestPath(edge, to, from, WIDTH)), 9);
      }),
    );
  });

  it('never takes a step longer than to the next pixel', () => {
    fc.assert(
      fc.property(smallMap, pixel, pixel, (edge, from, to) => {
        const path = cheapestPath(edge, from, to, 1);
        const longest = Math.max(0, ...path.slice(1).map(({ row, column }, at) => Math.max(Math.abs(row - path[at].row), Math.abs(column - path[at].column))));
        expect(longest).toBeLessThanOrEqual(1);
      }),
    );
  });
});

const RADIUS_MM = 5;
const CENTRE = { acrossMm: 30, downMm: 20 };
/** A circle drawn with a sharp pen: cheap on it, dear beside it. */
const circle: EdgeCost = (() => {
  const grid = gridOf(160, 160);
  const cost = Float32Array.from({ length: 160 * 160 }, (_, i) => {
    const acrossMm = grid.originAcrossMm + (i % 160) / 8;
    const downMm = grid.originDownMm + Math.floor(i / 160) / 8;
    const offMm = Math.abs(Math.hypot(acrossMm - CENTRE.acrossMm, downMm - CENTRE.downMm) - RADIUS_MM);
    return 0.5 + 0.5 * Math.min(1, offMm / 0.3);
  });
  return { grid, cost };
})();
const onCircle = (turn: number, offMm: number, held = false): SetPoint => ({
  acrossMm: CENTRE.acrossMm + (RADIUS_MM + offMm) * Math.cos(turn),
  downMm: CENTRE.downMm + (RADIUS_MM + offMm) * Math.sin(turn),
  held,
});
const offCircleMm = (point: { acrossMm: number; downMm: number }): number => Math.abs(Math.hypot(point.acrossMm - CENTRE.acrossMm, point.downMm - CENTRE.downMm) - RADIUS_MM);
const clicks = fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: 5, maxLength: 9 });

describe('a snapped line', () => {
  it('lies on the drawn edge, though no click did', () => {
    fc.assert(
      fc.property(clicks, (offs) => {
        const line = snapLine(circle, offs.map((off, at) => onCircle((2 * Math.PI * at) / offs.length, off)), true);
        expect(Math.max(...(line ?? []).map(offCircleMm))).toBeLessThan(0.15);
      }),
    );
  });

  it('goes through what was moved with care, to half a pixel of the map', () => {
    fc.assert(
      fc.property(clicks, fc.nat(), (offs, which) => {
        const points = offs.map((off, at) => onCircle((2 * Math.PI * at) / offs.length, off, at === which % offs.length));
        const held = points[which % offs.length];
        const nearest = Math.min(...(snapLine(circle, points, true) ?? []).map((p) => Math.hypot(p.acrossMm - held.acrossMm, p.downMm - held.downMm)));
        expect(nearest).toBeLessThanOrEqual(Math.SQRT1_2 / 8 + 1e-9);
      }),
    );
  });

  it('is the same each time', () => {
    fc.assert(
      fc.property(clicks, (offs) => {
        const points = offs.map((off, at) => onCircle(at, off));
        expect(snapLine(circle, points, false)).toEqual(snapLine(circle, points, false));
      }),
    );
  });

  it('stays on the map, wherever was clicked', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ acrossMm: fc.double({ min: -90, max: 90, noNaN: true }), downMm: fc.double({ min: -90, max: 90, noNaN: true }), held: fc.boolean() }), { minLength: 3, maxLength: 4 }), (points) => {
        for (const { acrossMm, downMm } of snapLine(circle, points, true) ?? []) {
          expect(acrossMm).toBeGreaterThanOrEqual(20);
          expect(acrossMm).toBeLessThanOrEqual(40);
          expect(downMm).toBeGreaterThanOrEqual(10);
          expect(downMm).toBeLessThanOrEqual(30);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('is none before there are points enough', () => {
    expect(snapLine(circle, [onCircle(0, 0)], false)).toBeNull();
    expect(snapLine(circle, [onCircle(0, 0), onCircle(1, 0)], true)).toBeNull();
  });
});
