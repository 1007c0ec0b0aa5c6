import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeTrend } from '../../../lib/trend/describe-trend';
import { inversionDistribution } from '../../../lib/trend/inversion-distribution';
import { mannKendall } from '../../../lib/trend/mann-kendall';
import { theilSen } from '../../../lib/trend/theil-sen';

const series = fc.uniqueArray(fc.record({ day: fc.integer({ min: 0, max: 60 }), value: fc.integer({ min: 0, max: 40 }) }), { selector: ({ day }) => day, minLength: 2, maxLength: 15 });

describe('a slope', () => {
  it('does not depend on where time begins: plus 1e12 it is the same', () => {
    fc.assert(
      fc.property(series, (all) => {
        const [days, values] = [all.map(({ day }) => day), all.map(({ value }) => value)];
        const far = theilSen(days.map((day) => day + 1e12), values, 0.95);
        const near = theilSen(days, values, 0.95);
        expect([far.slope, far.slopeFrom, far.slopeTo]).toEqual([near.slope, near.slopeFrom, near.slopeTo]);
      }),
    );
  });

  it('does not depend on the order of the photos, and lies in its interval', () => {
    fc.assert(
      fc.property(series, (all) => {
        const trend = (list: typeof all) => describeTrend(list.map(({ day, value }) => ({ day, photo: String(day), usable: true, reasons: [], measurements: { reach: { value, u: 0.4, unit: 'mm' } } })));
        expect(trend([...all].reverse())).toEqual(trend(all));
        const slope = trend(all).series.reach.slopePerDay;
        expect(slope !== null && slope.slopeFrom <= slope.slope && slope.slope <= slope.slopeTo).toBe(true);
      }),
    );
  });
});

describe('the Mann–Kendall test', () => {
  it('turns over with the values: rising and falling tails change places', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 2, maxLength: 12 }), (values) => {
        const [up, down] = [mannKendall(values), mannKendall(values.map((value) => -value))];
        expect(down.s).toBe(-up.s + 0);
        expect(down.fallingTail).toBeCloseTo(up.risingTail, 10);
      }),
    );
  });

  it('has chances that sum to one, and the variance of the formula, ties or none', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 2, maxLength: 10 }), (values) => {
        const ties = [...new Set(values)].map((one) => values.filter((value) => value === one).length).filter((size) => size > 1);
        const chances = inversionDistribution(values.length, ties);
        const pairs = chances.length - 1;
        const variance = chances.reduce((sum, chance, inversions) => sum + chance * (pairs - 2 * inversions) ** 2, 0);
        expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 10);
        expect(variance).toBeCloseTo(mannKendall(values).variance, 8);
      }),
    );
  });
});
