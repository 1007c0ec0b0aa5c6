import { describe, expect, it } from 'vitest';
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
