import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardPlace, placesOf, pointsAlong, type SetPoint, withPoint } from '../../../app/(staff)/episodes/[caseCode]/set-points';

const at = (acrossMm: number, downMm: number): SetPoint => ({ acrossMm, downMm, held: false });
const SQUARE = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)];

describe('a point that is pressed', () => {
  it('lies where the photo was pressed, in the card’s millimetres', () => {
    const frame = { left: 100, top: 50, width: 400, height: 500 } as DOMRect;
    expect(cardPlace({ x: 300, y: 175 }, frame, { acrossMm: 20, downMm: 10, widthMm: 40, heightMm: 50 })).toEqual({ acrossMm: 40, downMm: 22.5 });
  });

  it.each([
    [at(5, -1), true, 1],
    [at(11, 5), true, 2],
    [at(-1, 5), true, 4],
    [at(-1, 5), false, 0],
  ])('goes between the two points that it lies between', (added, closed, place) => {
    const start = closed ? SQUARE : [at(0, 5), at(10, 5), at(20, 5)];
    expect(withPoint(start, added, closed).at).toBe(place);
  });

  it('comes last while there are too few to lie between', () => {
    expect(withPoint([], at(1, 1), true)).toEqual({ points: [at(1, 1)], at: 0 });
    expect(withPoint([at(1, 1)], at(5, 5), false).at).toBe(1);
  });

  it('takes no other point away, whatever the order', () => {
    const place = fc.double({ min: 0, max: 60, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(place, place), { maxLength: 9 }), fc.boolean(), (pairs, closed) => {
        const points = pairs.map(([across, down]) => at(across, down));
        const more = withPoint(points, at(30, 30), closed);
        expect(more.points.filter((_, k) => k !== more.at)).toEqual(points);
      }),
    );
  });
});

describe('a line to begin from', () => {
  it('is the longest stretch of the path that is drawn', () => {
    expect(placesOf('M0.000 1.000L2.000 3.000ZM5.000 5.000L6.000 5.000L7.000 5.000Z')).toEqual([[5, 5], [6, 5], [7, 5]]);
  });

  it('has its ends where it is open, and no more points than can be handled', () => {
    const line = Array.from({ length: 1001 }, (_, k) => [k / 10, 0] as const);
    const open = pointsAlong(line, false);
    expect([open[0].acrossMm, open.at(-1)?.acrossMm, open.length]).toEqual([0, 100, 16]);
    expect(pointsAlong(line.slice(0, 101), true)).toHaveLength(6);
  });
});
