import { describe, expect, it } from 'vitest';
import { fitLine, intersectLines, type LinePx } from '../../../lib/rectify/fit-line';
import type { PointPx } from '../../../lib/units';
import { randomSource } from '../../phantom/random/random-source';

const offsetPx = (line: LinePx, p: PointPx): number =>
  Math.abs((p.row - line.through.row) * line.direction.column - (p.column - line.through.column) * line.direction.row);

/** Points along a line at the given angle through (40, 60). */
function pointsAlong(angleDeg: number, count: number): PointPx[] {
  const angle = (angleDeg * Math.PI) / 180;
  return Array.from({ length: count }, (_, i) => ({ row: 40 + i * 2 * Math.sin(angle), column: 60 + i * 2 * Math.cos(angle) }));
}

describe('a line through edge points', () => {
  it.each([0, 17, 45, 90, 133])('passes through points that lie on a line at %f°', (angleDeg) => {
    const points = pointsAlong(angleDeg, 24);
    const line = fitLine(points);
    for (const point of points) expect(offsetPx(line, point)).toBeLessThan(1e-9);
    expect(Math.hypot(line.direction.row, line.direction.column)).toBeCloseTo(1, 12);
  });

  it('is not moved by a quarter of its points lying on another edge', () => {
    const clean = pointsAlong(30, 24);
    const spoilt = clean.map((p, i) => (i % 4 === 0 ? { row: p.row + 3 + (i % 3), column: p.column } : p));
    const line = fitLine(spoilt);
    for (const point of clean) expect(offsetPx(line, point)).toBeLessThan(0.01);
  });

  it('stays within a tenth of a pixel under noise of 0.15 px', () => {
    const random = randomSource(7, 'noisy line');
    for (let trial = 0; trial < 50; trial++) {
      const clean = pointsAlong(random.between(0, 180), 24);
      const line = fitLine(clean.map((p) => ({ row: p.row + 0.15 * random.normal(), column: p.column + 0.15 * random.normal() })));
      expect(offsetPx(line, clean[0])).toBeLessThan(0.2);
      expect(offsetPx(line, clean[12])).toBeLessThan(0.12);
    }
  });

  it('refuses a single point and says how many it received', () => {
    expect(() => fitLine([{ row: 0, column: 0 }])).toThrow(/fitLine.*two points.*received 1/);
  });
});

describe('the crossing of two lines', () => {
  it('is where both pass', () => {
    const crossing = intersectLines(fitLine(pointsAlong(20, 5)), fitLine([{ row: 0, column: 60 }, { row: 100, column: 60 }]));
    expect(crossing?.row).toBeCloseTo(40, 9);
    expect(crossing?.column).toBeCloseTo(60, 9);
  });

  it('does not exist for parallel lines', () => {
    const line = fitLine(pointsAlong(20, 5));
    expect(intersectLines(line, { ...line, through: { row: 0, column: 0 } })).toBeNull();
  });
});
