/** Edges of the small numeric functions that a trend is made of; values worked by hand. */
import { describe, expect, it } from 'vitest';
import { cusumChart } from '../../../lib/trend/cusum-chart';
import { detectableChange } from '../../../lib/trend/detectable-change';
import { ewmaChart } from '../../../lib/trend/ewma-chart';
import { exponentialDecay } from '../../../lib/trend/exponential-decay';
import { gilmanAdvance, groovePerimeterForGilmanAdvance } from '../../../lib/trend/gilman-advance';
import { inversionDistribution } from '../../../lib/trend/inversion-distribution';
import { mannKendall } from '../../../lib/trend/mann-kendall';
import { medianOfSorted } from '../../../lib/trend/median-of-sorted';
import { percentAreaReduction } from '../../../lib/trend/percent-area-reduction';
import { theilSen } from '../../../lib/trend/theil-sen';
import { tieSizes } from '../../../lib/trend/tie-sizes';

describe('wrong arguments are named with what was received', () => {
  it.each([
    ['ewmaChart', () => ewmaChart([1], 0, 1, 0, 3), /weight above 0.*received 0/],
    ['ewmaChart', () => ewmaChart([1], 0, 1, 1.1, 3), /weight above 0.*received 1\.1/],
    ['exponentialDecay', () => exponentialDecay(2, 1, 0), /days above 0.*received 0/],
    ['exponentialDecay', () => exponentialDecay(2, 1, NaN), /received NaN/],
    ['groovePerimeterForGilmanAdvance', () => groovePerimeterForGilmanAdvance(4, 0), /width above 0.*received 0/],
    ['mannKendall', () => mannKendall([1]), /at least two values.*received 1/],
    ['medianOfSorted', () => medianOfSorted([]), /at least one value/],
    ['percentAreaReduction', () => percentAreaReduction(0, 1), /area above 0.*received 0/],
    ['theilSen', () => theilSen([1, 2], [1, 2, 3], 0.95), /received 2 and 3/],
    ['theilSen', () => theilSen([1, 1], [1, 2], 0.95), /two different times/],
  ])('%s', (_name, act, message) => {
    expect(act).toThrow(message);
    expect(act).toThrow(RangeError);
  });
});

describe('a weighted average', () => {
  it('of weight 1 is the value itself, and a value on the limit is not above it', () => {
    const chart = ewmaChart([3, 3.1], 0, 1, 1, 3);
    expect(chart.smoothed).toEqual([3, 3.1]);
    expect(chart.firstAbove).toBe(1);
  });

  it('sees the very first value', () => {
    expect(ewmaChart([9, 0], 0, 1, 1, 3).firstAbove).toBe(0);
  });
});

describe('a cumulative sum', () => {
  it('does not signal on its limit, and signals beyond it, also at the very first value', () => {
    expect(cusumChart([2, 2], 0, 0, 4).firstUp).toBeNull();
    expect(cusumChart([2, 2.5], 0, 0, 4).firstUp).toBe(1);
    expect(cusumChart([5], 0, 0, 4).firstUp).toBe(0);
    expect(cusumChart([-5], 0, 0, 4).firstDown).toBe(0);
  });
});

describe('rates', () => {
  it('have no decay from nothing', () => {
    expect(exponentialDecay(0, 1, 1)).toBeNull();
    expect(exponentialDecay(-1, -1, 1)).toBeNull();
    expect(exponentialDecay(Math.E, 1, 2)).toBeCloseTo(0.5, 12);
  });

  it('have no advance between two points', () => {
    expect(gilmanAdvance({ areaMm2: 0, perimeterMm: 0 }, { areaMm2: 0, perimeterMm: 0 })).toBe(0);
  });

  it('call a change seen that is just as large as the smallest detectable', () => {
    const { smallestDetectable } = detectableChange({ value: 0, u: 1 }, { value: 0, u: 1 }, 'mm');
    expect(detectableChange({ value: 0, u: 1 }, { value: smallestDetectable, u: 1 }, 'mm').seen).toBe(true);
    expect(detectableChange({ value: smallestDetectable, u: 1 }, { value: 0, u: 1 }, 'mm').seen).toBe(true);
    expect(detectableChange({ value: 0, u: 1 }, { value: 0.999 * smallestDetectable, u: 1 }, 'mm').seen).toBe(false);
  });
});

describe('ties', () => {
  it('are counted wherever they stand, the last ones too', () => {
    expect(tieSizes([3, 1, 2])).toEqual([]);
    expect(tieSizes([1, 2, 1, 2, 2])).toEqual([2, 3]);
    expect(tieSizes([])).toEqual([]);
    expect(tieSizes([5, 4, 3, 3])).toEqual([2]);
  });
});

describe('the Mann–Kendall test of more values than are counted out', () => {
  // 31 values: variance 31 · 30 · 67 / 18, S of a rise without end 465.
  const rising = Array.from({ length: 31 }, (_, at) => at);

  it('takes the normal distribution, one step toward zero', () => {
    const test = mannKendall(rising);
    expect(test.exact).toBe(false);
    expect(test.s).toBe(465);
    expect(test.variance).toBeCloseTo(3461.667, 3);
    expect(test.z).toBeCloseTo(464 / Math.sqrt(3461.667), 6);
    // The statistics library's table of the normal distribution ends at 0.001.
    expect(test.risingTail).toBeLessThan(0.0011);
    expect(test.fallingTail).toBeGreaterThan(0.9989);
    expect(mannKendall([...rising].reverse()).fallingTail).toBeLessThan(0.0011);
  });

  it('is near a half both ways where half of the pairs rise', () => {
    // Neighbours changed places until S is small: 0, 30, 1, 29, …
    const mixed = rising.map((at) => (at % 2 === 0 ? at / 2 : 30 - (at - 1) / 2));
    const { s, variance, risingTail, fallingTail } = mannKendall(mixed);
    expect(Math.abs(s)).toBeLessThan(20);
    expect(risingTail + fallingTail).toBeGreaterThan(1);
    expect(risingTail).toBeCloseTo(0.5 - 0.3989 * ((s - 1) / Math.sqrt(variance)), 2);
  });

  it('says nothing of values that are all the same, few or many', () => {
    expect(mannKendall(Array<number>(31).fill(4))).toMatchObject({ s: 0, variance: 0, z: 0, risingTail: 1, fallingTail: 1 });
    expect(mannKendall([4, 4])).toMatchObject({ s: 0, variance: 0, z: 0, risingTail: 1, fallingTail: 1, exact: true });
  });

  it('is exact for two values: each order has half of the chance', () => {
    expect(mannKendall([1, 2])).toMatchObject({ n: 2, s: 1, risingTail: 0.5, fallingTail: 1, exact: true });
  });
});

describe('the chances of inversions', () => {
  it('stay what they were whatever is done with an answer', () => {
    const first = inversionDistribution(3, []);
    // 1, 2, 2, 1 of six orders.
    expect(Array.from(first, (chance) => Math.round(6 * chance))).toEqual([1, 2, 2, 1]);
    first.fill(0);
    const second = inversionDistribution(3, []);
    expect(Array.from(second, (chance) => Math.round(6 * chance))).toEqual([1, 2, 2, 1]);
    second.fill(0);
    expect(Array.from(inversionDistribution(3, []), (chance) => Math.round(6 * chance))).toEqual([1, 2, 2, 1]);
  });

  it('know ties: of three values two alike there are three orders', () => {
    expect(Array.from(inversionDistribution(3, [2]), (chance) => Math.round(3 * chance))).toEqual([1, 1, 1]);
    expect(Array.from(inversionDistribution(3, []), (chance) => Math.round(6 * chance))).toEqual([1, 2, 2, 1]);
  });
});

describe('Theil and Sen’s line', () => {
  it('does not care in which order the photos come', () => {
    const fit = theilSen([3, 1, 2, 10], [9, 1, 5, 2], 0.9);
    // Slopes of the six pairs, sorted: −1, −3/8, 1/9, 4, 4, 4: median (1/9 + 4) / 2; middles 2.5 and 3.5.
    const slope = (1 / 9 + 4) / 2;
    expect(fit.slope).toBeCloseTo(slope, 12);
    expect(fit.intercept).toBeCloseTo(3.5 - 2.5 * slope, 12);
  });

  it('leaves out pairs of the same time', () => {
    expect(theilSen([0, 0, 1], [0, 5, 7], 0.9).slope).toBeCloseTo((7 + 2) / 2, 12);
  });

  it('has the widest interval that few photos allow: all slopes', () => {
    const fit = theilSen([0, 1, 2], [0, 1, 5], 0.99);
    expect([fit.slopeFrom, fit.slopeTo]).toEqual([1, 4]);
  });

  it('is surer of a slope among values that are tied', () => {
    // Six values in two tied threes: 28.33 would be the variance without ties, 21 is with them (EPA QA/G-9, formula).
    const fit = theilSen([1, 2, 3, 4, 5, 6], [1, 1, 1, 2, 2, 2], 0.9);
    expect(fit.slope).toBeCloseTo(0.25, 1);
    expect(fit.slopeTo).toBeLessThanOrEqual(0.5);
  });
});
