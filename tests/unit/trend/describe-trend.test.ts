import { describe, expect, it } from 'vitest';
import { CUSUM_DECISION, CUSUM_SLACK, EWMA_LIMIT, EWMA_WEIGHT, LEAST_U_AREA_SHARE } from '../../../lib/trend/constants';
import { describeTrend } from '../../../lib/trend/describe-trend';
import { projectDryDay } from '../../../lib/trend/project-dry-day';
import type { ReadPhoto, SeriesPoint } from '../../../lib/trend/series';
import { watchReach } from '../../../lib/trend/watch-reach';

const photoOn = (day: number, numbers: Record<string, number | string>, usable = true): ReadPhoto => ({
  day,
  photo: `day ${day}`,
  usable,
  reasons: usable ? [] : ['blur'],
  measurements: Object.fromEntries(Object.entries(numbers).map(([name, value]) => [name, typeof value === 'string' ? { notMeasured: value } : { value, u: 0.5, unit: 'mm' }])),
});
const points = (...values: readonly (readonly [number, number])[]): SeriesPoint[] => values.map(([day, value]) => ({ day, value, u: 0.5, photo: `day ${day}` }));

describe('a series', () => {
  const trend = () => describeTrend([photoOn(5, { reach: 2 }), photoOn(1, { reach: 4 }), photoOn(2, { reach: 'noRegionFound' }), photoOn(3, { reach: 9 }, false), photoOn(4, { reach: 3 })]);

  it('is in days since the procedure, oldest first', () => {
    expect(trend().series.reach.points.map(({ day, value }) => [day, value])).toEqual([[1, 4], [4, 3], [5, 2]]);
  });

  it('keeps what was not measured as a gap with its reason, never as zero', () => {
    expect(trend().series.reach.gaps.map(({ day, reason }) => [day, reason])).toEqual([[2, 'noRegionFound'], [3, 'blur']]);
  });

  it('ends its line at a gap, at a refused photo and after two missed days', () => {
    expect(trend().series.reach.stretches).toEqual([[1, 1], [4, 5]]);
    expect(describeTrend([photoOn(1, { reach: 4 }), photoOn(3.5, { reach: 4 }), photoOn(6.1, { reach: 4 })]).series.reach.stretches).toEqual([[1, 3.5], [6.1, 6.1]]);
  });

  it('marks refused photos on the axis', () => {
    expect(trend().refused).toEqual([{ day: 3, photo: 'day 3', reasons: ['blur'] }]);
  });

  it('takes the unrolled reach where there is one', () => {
    expect(describeTrend([photoOn(1, { reach: 4, unrolledReach: 6 })]).series.reach.points[0].value).toBe(6);
  });
});

describe('what is claimed', () => {
  const falling = (...values: number[]) => describeTrend(values.map((reach, day) => photoOn(day + 1, { reach }))).series.reach;

  it('is no trend with fewer than four photos, and with four only if every step falls', () => {
    expect(falling(4, 3, 2).trend).toBe('tooFewPhotos');
    expect(falling(5, 4, 3, 2).trend).toBe('falls');
    expect(falling(5, 4, 2, 3).trend).toBe('noTrendSeen');
    expect(falling(2, 3, 4, 5).trend).toBe('rises');
  });

  it('has a slope with its interval, and the last change with the smallest that can be seen', () => {
    const { slopePerDay, lastChange } = falling(5, 4, 3, 2);
    expect(slopePerDay?.slope).toBe(-1);
    expect(lastChange).toMatchObject({ difference: -1, seen: false });
    expect(lastChange?.smallestDetectable).toBeCloseTo(1.96 * Math.hypot(0.5, 0.5), 12);
  });
});

describe('the projected dry day', () => {
  const decay = (days: number, k: number) => points(...Array.from({ length: days }, (_, day) => [day + 1, 20 * Math.exp(-k * day)] as const));

  it('needs five usable photos from the peak on', () => {
    expect(projectDryDay(decay(4, 0.2))).toEqual({ notProjected: 'tooFewPhotos' });
  });

  it('of an exponential is where a twentieth of the peak is left, whatever the interval', () => {
    const projected = projectDryDay(decay(6, 0.2));
    if ('notProjected' in projected) throw new Error(projected.notProjected);
    expect(projected.ratePerDay).toBeCloseTo(0.2, 10);
    expect(projected.day).toBeCloseTo(1 + Math.log(20) / 0.2, 8);
    expect(projected.fromDay).toBeLessThanOrEqual(projected.day + 1e-9);
    expect(projected.toDay ?? Infinity).toBeGreaterThanOrEqual(projected.day - 1e-9);
  });

  it('is not made up where nothing shrinks, or little is left', () => {
    expect(projectDryDay(points([1, 20], [2, 20], [3, 20], [4, 20], [5, 20]))).toEqual({ notProjected: 'notShrinking' });
    expect(projectDryDay(decay(20, 0.2))).toEqual({ notProjected: 'alreadyClosed' });
  });
});

describe('the quicker eye on reach', () => {
  it('has no level with three photos', () => {
    expect(watchReach(points([2, 3], [3, 3], [4, 3]))).toBeNull();
  });

  it('names the photo at which it first saw a rise', () => {
    const watched = watchReach(points([2, 3], [3, 3], [4, 3], [5, 3], [6, 5], [7, 7]));
    expect(watched?.levelMm).toBe(3);
    expect(watched?.ewmaSawAt).toBe('day 7');
    expect(watched?.cusumSawAt).toBe('day 7');
  });
});

describe('a watched reach', () => {
  const watch = (...values: readonly (readonly [day: number, value: number, u?: number])[]) => watchReach(values.map(([day, value, u = 0.5]) => ({ day, value, u, photo: `day ${day}` })));

  it('has the median of the first three as its level, in whatever order they came, and the largest of their doubts', () => {
    const watched = watch([2, 5, 0.5], [3, 1, 2], [4, 3, 0.5], [5, 30], [6, 3]);
    expect(watched?.levelMm).toBe(3);
    // Limits grow with u = 2: 3 + 3 · 2 · √(0.3 / 1.7) would be the NIST chart's with weight 0.3 and limit 3.
    expect(watched?.ewmaUpperMm).toBeCloseTo(3 + EWMA_LIMIT * 2 * Math.sqrt(EWMA_WEIGHT / (2 - EWMA_WEIGHT)), 9);
    expect(watched?.cusumDecisionMm).toBeCloseTo(2 * CUSUM_DECISION, 9);
    // The first sum is the excess over level and slack.
    expect(watched?.cusumMm[0]).toBeCloseTo(27 - 2 * CUSUM_SLACK, 9);
    expect(watched?.cusumSawAt).toBe('day 5');
  });

  it('does not take a small doubt for none: lengths are never surer than the floor', () => {
    const watched = watch([2, 3, 0], [3, 3, 0], [4, 3, 0], [5, 3, 0]);
    expect(watched?.cusumDecisionMm).toBeGreaterThan(0);
    expect(watched?.ewmaSawAt).toBeNull();
    expect(watched?.cusumSawAt).toBeNull();
  });

  it('begins on the second day: photos before say nothing of the level', () => {
    const photos = [[0.5, 20], [1.9, 20], [2, 3], [3, 3], [4, 3], [5, 3]] as const;
    expect(describeTrend(photos.map(([day, reach]) => photoOn(day, { reach }))).reachWatch?.levelMm).toBe(3);
  });
});

describe('an area', () => {
  const areas = (...values: readonly (readonly [day: number, value: number])[]) =>
    describeTrend(values.map(([day, value]) => ({ ...photoOn(day, {}), measurements: { rawArea: { value, u: 1, unit: 'mm2' }, grooveWidth: { value: 2, u: 0.2, unit: 'mm' } } })));

  it('is followed from its peak, the first of two alike', () => {
    const { series } = areas([1, 10], [2, 40], [3, 40], [4, 10]);
    expect(series.rawArea.peak).toMatchObject({ day: 2, value: 40 });
    expect(series.rawArea.percentReductionFromPeak).toBeCloseTo(75, 12);
    expect(series.grooveWidth.percentReductionFromPeak).toBeNull();
  });

  it('has no percent where there is nothing to begin with', () => {
    expect(areas([1, 0], [2, 0]).series.rawArea.percentReductionFromPeak).toBeNull();
    expect(describeTrend([]).series.rawArea).toMatchObject({ peak: null, percentReductionFromPeak: null, lastChange: null, mannKendall: null, slopePerDay: null, trend: 'tooFewPhotos' });
  });

  it('has a linear advance since its peak: 36 → 24 mm² beside a groove of 2 mm', () => {
    // Perimeters 2 · (18 + 2) and 2 · (12 + 2): 2 · 12 / (40 + 28).
    const advance = areas([1, 12], [2, 36], [5, 24]).linearAdvanceMm;
    expect(advance?.value).toBeCloseTo(24 / 68, 12);
    expect(advance?.perDay).toBeCloseTo(24 / 68 / 3, 12);
    expect(advance?.sincePhoto).toBe('day 2');
  });

  it('has none at its peak, without a width, or without an area', () => {
    expect(areas([1, 12], [2, 36]).linearAdvanceMm).toBeNull();
    expect(areas().linearAdvanceMm).toBeNull();
    const photos = [[1, 36, 2], [3, 24, 0]] as const;
    expect(describeTrend(photos.map(([day, value, width]) => ({ ...photoOn(day, {}), measurements: { rawArea: { value, u: 1, unit: 'mm2' }, grooveWidth: { value: width, u: 0.2, unit: 'mm' } } }))).linearAdvanceMm).toBeNull();
    expect(describeTrend([1, 3].map((day) => ({ ...photoOn(day, {}), measurements: { rawArea: { value: 40 - day, u: 1, unit: 'mm2' } } }))).linearAdvanceMm).toBeNull();
  });

  it('is doubted by a share of itself, a length by a floor in millimetres', () => {
    const change = areas([1, 100], [2, 100]).series.rawArea.lastChange;
    expect(change?.smallestDetectable).toBeCloseTo(1.96 * Math.SQRT2 * Math.max(1, LEAST_U_AREA_SHARE * 100), 9);
  });
});

describe('a series with two photos', () => {
  it('has a slope and a test, and is no trend', () => {
    const { reach } = describeTrend([photoOn(1, { reach: 4 }), photoOn(2, { reach: 3 })]).series;
    expect(reach.slopePerDay?.slope).toBe(-1);
    expect(reach.mannKendall?.s).toBe(-1);
    expect(reach.trend).toBe('tooFewPhotos');
  });

  it('has no slope where both are of one moment', () => {
    expect(describeTrend([photoOn(1, { reach: 4 }), photoOn(1, { reach: 3 })]).series.reach.slopePerDay).toBeNull();
  });

  it('is joined where the gap lies beside it and not within', () => {
    const { stretches } = describeTrend([photoOn(1, { reach: 'noRegionFound' }), photoOn(1, { reach: 4 }), photoOn(2, { reach: 3 }), photoOn(2, { reach: 'noRegionFound' })]).series.reach;
    expect(stretches).toEqual([[1, 2]]);
  });
});

describe('refused photos', () => {
  it('are marked oldest first, and named where nothing says why', () => {
    const photos = [{ ...photoOn(5, {}, false), reasons: ['blur', 'tilt'] }, { ...photoOn(2, {}, false), reasons: [] }, photoOn(3, {})];
    const trend = describeTrend(photos);
    expect(trend.refused.map(({ day }) => day)).toEqual([2, 5]);
    expect(trend.series.reach.gaps).toEqual([
      { day: 2, photo: 'day 2', reason: 'notMeasured' },
      { day: 3, photo: 'day 3', reason: 'notGiven' },
      { day: 5, photo: 'day 5', reason: 'blur, tilt' },
    ]);
  });
});

describe('a dry day that is projected', () => {
  it('begins at the peak, and leaves out what was not there', () => {
    const grownFirst = points([1, 2], [2, 100], [3, 50], [4, 25], [5, 0], [6, 12.5], [7, 6.25]);
    const projected = projectDryDay(grownFirst);
    if ('notProjected' in projected) throw new Error(projected.notProjected);
    // Halves of 100 at 2, 3, 4, then one day later: slopes of ln 2 a day between the first three.
    expect(projected.ratePerDay).toBeGreaterThan(0.5);
    expect(projected.day).toBeCloseTo(7 + Math.log(6.25 / 5) / projected.ratePerDay, 9);
  });

  it('is closed where just a twentieth of the peak is left', () => {
    expect(projectDryDay(points([1, 100], [2, 60], [3, 30], [4, 10], [5, 5]))).toEqual({ notProjected: 'alreadyClosed' });
  });

  it('is not named where it lies too far off, and its end is left open where the slowest that fits never gets there', () => {
    expect(projectDryDay(points([1, 100], [2, 99.9], [3, 99.8], [4, 99.7], [5, 99.6]))).toEqual({ notProjected: 'notShrinking' });
    const scattered = projectDryDay(points([1, 100], [2, 50], [3, 80], [4, 40], [5, 70], [6, 45]));
    expect(scattered).toMatchObject({ toDay: null });
    const steady = projectDryDay(points([1, 100], [2, 60], [3, 45], [4, 30], [5, 20], [6, 13]));
    if ('notProjected' in steady) throw new Error(steady.notProjected);
    expect(steady.toDay).toBeGreaterThan(steady.day);
    expect(steady.fromDay).toBeLessThan(steady.day);
  });
});
