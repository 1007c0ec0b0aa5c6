/** Reach comes projected and, on some photos only, unrolled: two visits are compared in one kind of it. */
import { describe, expect, it } from 'vitest';
import { describeTrend } from '../../../lib/trend/describe-trend';
import { judge, levelsOf, photo, type Numbers } from './invented-course';

const visits = (...numbers: readonly Numbers[]) => numbers.map((one, i) => ({ hours: 48 + 24 * i, photo: photo({ erythemaArea: 40, ...one }) }));

describe('redness that spreads', () => {
  it('is seen in the projected reach where some visits were not unrolled, whichever those are', () => {
    const grows = [3, 3, 3, 5, 6.5];
    for (const missing of [[0], [2], [4], [0, 1, 2, 3, 4]]) {
      const course = visits(...grows.map((reach, i) => ({ reach, unrolledReach: missing.includes(i) ? 'toeShapeUnknown' : 9 })));
      expect(levelsOf('spreading', judge(course)), `not unrolled: ${missing}`).toEqual(['today']);
    }
  });

  it('is not made of a change from one kind to the other', () => {
    const same = [3, 3, 3, 3, 3].map((reach, i) => (i < 3 ? { reach } : { reach, unrolledReach: 6 }));
    expect(levelsOf('spreading', judge(visits(...same)))).toEqual([]);
    expect(levelsOf('spreading', judge(visits(...[...same].reverse())))).toEqual([]);
  });

  it('is seen in the unrolled reach where every visit has it, and where the newest has nothing else', () => {
    const unrolled = [4, 4, 4, 7, 8];
    expect(levelsOf('spreading', judge(visits(...unrolled.map((unrolledReach) => ({ reach: 3, unrolledReach })))))).toEqual(['today']);
    expect(levelsOf('spreading', judge(visits(...unrolled.map((unrolledReach, i) => ({ reach: i < 3 ? 3 : 'marginNotFound', unrolledReach })))))).toEqual(['today']);
  });
});

describe('an antibiotic', () => {
  const started = (...numbers: readonly Numbers[]) => levelsOf('antibiotic-no-better', judge(visits(...numbers), { antibioticStartedAt: '2026-03-05T09:00:00Z' }));

  it('has brought nothing down where only the kind of reach changed', () => {
    // Unrolled 9 before and projected 5 after it are the same redness.
    expect(started({ reach: 5, unrolledReach: 9 }, { reach: 5, unrolledReach: 9 }, { reach: 5 }, { reach: 5 }, { reach: 5 })).toEqual(['today']);
    expect(started({ reach: 5, unrolledReach: 9 }, { reach: 5, unrolledReach: 9 }, { reach: 5 }, { reach: 3 }, { reach: 2 })).toEqual([]);
  });
});

describe('the series of a course', () => {
  const photoOn = (day: number, numbers: Numbers) => ({ ...photo(numbers), day, photo: `p${day}`, usable: true }) as never;

  it('is of one kind of reach from its first point to its last', () => {
    const values = (...all: readonly Numbers[]) => describeTrend(all.map((one, day) => photoOn(day, one))).series.reach.points.map(({ value }) => value);
    expect(values({ reach: 3, unrolledReach: 5 }, { reach: 4, unrolledReach: 7 })).toEqual([5, 7]);
    expect(values({ reach: 3, unrolledReach: 5 }, { reach: 4, unrolledReach: 'toeShapeUnknown' })).toEqual([3, 4]);
    expect(values({ reach: 3, unrolledReach: 5 }, { reach: 'noRegionFound', unrolledReach: 'noRegionFound' })).toEqual([5]);
  });
});
