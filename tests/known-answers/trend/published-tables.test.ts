/** Published tables of the statistics that the trend shows. */
import { describe, expect, it } from 'vitest';
import { cusumChart } from '../../../lib/trend/cusum-chart';
import { detectableChange } from '../../../lib/trend/detectable-change';
import { ewmaChart } from '../../../lib/trend/ewma-chart';
import { exponentialDecay } from '../../../lib/trend/exponential-decay';
import { gilmanAdvance, groovePerimeterForGilmanAdvance } from '../../../lib/trend/gilman-advance';
import { mannKendall } from '../../../lib/trend/mann-kendall';
import { percentAreaReduction } from '../../../lib/trend/percent-area-reduction';
import { theilSen } from '../../../lib/trend/theil-sen';

describe('Sen 1968, J Am Stat Assoc 63:1379–89 (example as in the SciPy test suite)', () => {
  const line = () => theilSen([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], 0.93);

  it('has slope 4 and the 93 % interval [26/7, 35/8]', () => {
    expect(line().slope).toBe(4);
    expect(line().slopeFrom).toBeCloseTo(26 / 7, 12);
    expect(line().slopeTo).toBeCloseTo(35 / 8, 12);
  });

  it('has intercept 4, by the medians of values and times', () => {
    expect(line().intercept).toBe(4);
  });
});

describe('Hollander and Wolfe, cloud seeding (from memory, recomputed)', () => {
  it('has slope −0.05625 and the 90 % interval [−0.13, 0.01]', () => {
    const fit = theilSen([1, 2, 3, 4, 5], [1.26, 1.27, 1.12, 1.16, 1.03], 0.9);
    expect(fit.slope).toBeCloseTo(-0.05625, 10);
    expect(fit.slopeFrom).toBeCloseTo(-0.13, 10);
    expect(fit.slopeTo).toBeCloseTo(0.01, 10);
  });

  it('has S = −6', () => {
    expect(mannKendall([1.26, 1.27, 1.12, 1.16, 1.03]).s).toBe(-6);
  });
});

describe('Mann–Kendall', () => {
  it('agrees with US EPA QA/G-9S, p. 109: S 22, variance 155.33, Z 1.685', () => {
    const test = mannKendall([10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15]);
    expect(test.s).toBe(22);
    expect(test.variance).toBeCloseTo(155.33, 2);
    expect(test.z).toBeCloseTo(1.685, 3);
    // The published 0.0460 is the normal approximation; the exact tail lies beside it.
    expect(Math.abs(test.risingTail - 0.046)).toBeLessThan(0.001);
  });

  it('agrees with the Wisconsin Administrative Code, table A: S −5, and 15.667 with one tie of two', () => {
    const test = mannKendall([100, 50, 85, 75, 50]);
    expect(test.s).toBe(-5);
    expect(test.variance).toBeCloseTo(15.667, 3);
  });

  it('counts ties of 3, 2 and 4: S 7, variance 111.667', () => {
    const test = mannKendall([17, 14, 39, 16, 39, 14, 14, 39, 17, 39]);
    expect(test.s).toBe(7);
    expect(test.variance).toBeCloseTo(111.667, 3);
  });

  it('agrees with the small-sample box of EPA QA/G-9: S 6 of five values has the tail 0.117', () => {
    expect(mannKendall([5, 6, 11, 8, 10]).risingTail).toBeCloseTo(14 / 120, 12);
  });

  // Kendall's table of exact tails for S, as in Hollander and Wolfe; recomputed by enumeration.
  it.each([
    [[1, 2, 4, 3], 4, 0.1667],
    [[1, 2, 3, 4], 6, 0.0417],
    [[1, 3, 2, 4, 5], 8, 0.0417],
    [[1, 2, 3, 4, 5], 10, 0.0083],
    [[2, 1, 3, 5, 4, 6], 11, 0.0278],
    [[2, 1, 4, 3, 6, 5, 7], 15, 0.0151],
  ])('has the exact tail of %j: S ≥ %i with chance %f', (values, s, tail) => {
    const test = mannKendall(values);
    expect(test.s).toBe(s);
    expect(test.risingTail).toBeCloseTo(tail, 4);
  });

  // earthsoft's table of critical S at 95 %, n = 4 … 10; some are unreachable by parity, so "at least" is meant.
  it.each([
    [4, 6],
    [5, 8],
    [6, 11],
    [7, 13],
    [8, 16],
    [9, 18],
    [10, 21],
  ])('of %i values calls S ≥ %i a trend at 95 %%, and nothing two steps lower', (n, critical) => {
    const withS = (wanted: number) => {
      const values = Array.from({ length: n }, (_, place) => place);
      let s = (n * (n - 1)) / 2;
      // Swapping neighbours takes S down by two.
      for (let pass = 0; s > wanted; pass++) {
        for (let at = 0; at + 1 < n && s > wanted; at++) {
          if (values[at] < values[at + 1]) {
            [values[at], values[at + 1]] = [values[at + 1], values[at]];
            s -= 2;
            at++;
          }
        }
        if (pass > n * n) throw new Error('never');
      }
      return mannKendall(values);
    };
    const reachable = critical + ((((n * (n - 1)) / 2 - critical) % 2) + 2) % 2;
    expect(withS(reachable).s).toBe(reachable);
    expect(withS(reachable).risingTail).toBeLessThanOrEqual(0.05);
    expect(withS(reachable - 4).risingTail).toBeGreaterThan(0.05);
  });
});

describe('NIST/SEMATECH e-Handbook 6.3.2.4, EWMA', () => {
  const X = [52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  const EWMA = [50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99];
  const chart = () => ewmaChart(X, 50, 2.0539, 0.3, 3);

  it('has the published limits 52.5884 and 47.4115', () => {
    expect(Math.abs(chart().upper - 52.5884)).toBeLessThan(1e-4);
    expect(Math.abs(chart().lower - 47.4115)).toBeLessThan(1e-4);
  });

  it('has the twenty published averages to two places, none out of control', () => {
    chart().smoothed.forEach((value, place) => expect(Math.abs(value - EWMA[place])).toBeLessThan(0.0051));
    expect(chart().firstAbove).toBeNull();
  });
});

describe('NIST/SEMATECH e-Handbook 6.3.2.3, CUSUM', () => {
  const X = [324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15, 328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35];
  const chart = () => cusumChart(X, 325, 0.3175, 4.1959);

  it('signals first at the fourteenth value', () => {
    expect(chart().firstUp).toBe(13);
    expect(chart().up[12]).toBeCloseTo(3.007, 2);
    expect(chart().up[13]).toBeCloseTo(4.94, 2);
    expect(chart().up[19]).toBeCloseTo(19.035, 2);
  });

  it('never signals downward', () => {
    expect(chart().firstDown).toBeNull();
    expect(chart().down[3]).toBeCloseTo(0.3325, 3);
  });
});

describe('area measures', () => {
  it('has Gilman’s advance of exactly 1 mm for a circle that shrinks from radius 5 to 4 mm (Gilman 1990; geometry)', () => {
    const circle = (radius: number) => ({ areaMm2: Math.PI * radius ** 2, perimeterMm: 2 * Math.PI * radius });
    expect(gilmanAdvance(circle(5), circle(4))).toBeCloseTo(1, 12);
    expect(percentAreaReduction(circle(5).areaMm2, circle(4).areaMm2)).toBeCloseTo(36, 10);
    expect(exponentialDecay(circle(5).areaMm2, circle(4).areaMm2, 7)).toBeCloseTo(0.0637553, 7);
  });

  it('understates the side walls of a groove of 12 × 3 mm that narrows to 12 × 2 mm: 0.41 instead of 0.5 mm', () => {
    const groove = (width: number) => ({ areaMm2: 12 * width, perimeterMm: groovePerimeterForGilmanAdvance(12 * width, width) });
    expect(gilmanAdvance(groove(3), groove(2))).toBeCloseTo(0.413793, 6);
    expect(exponentialDecay(36, 24, 7)).toBeCloseTo(0.0579236, 7);
  });

  it('has k = ln(A₀/A)/t = 0.0729751 per day for 100 → 60 mm² in 7 days, and none where nothing is left', () => {
    expect(exponentialDecay(100, 60, 7)).toBeCloseTo(0.0729751, 7);
    expect(exponentialDecay(100, 0, 7)).toBeNull();
    expect(percentAreaReduction(100, 0)).toBe(100);
  });

  // Landa et al. 2014, Int Wound J (PMC7949804): SEM 6.88 and SDC 19.08 for granulation, percent.
  it('has a smallest detectable change of 1.96·√2·SEM (Landa et al. 2014)', () => {
    const change = detectableChange({ value: 0, u: 6.88 }, { value: 20, u: 6.88 }, '%');
    expect(change.smallestDetectable).toBeCloseTo(19.07, 2);
    expect(change.seen).toBe(true);
  });
});
