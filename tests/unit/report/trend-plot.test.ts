import { describe, expect, it } from 'vitest';
import { type PlotWords, trendPlot } from '../../../lib/report/trend-plot';
import { describeSeries } from '../../../lib/trend/describe-series';
import { buildSeries, type ReadPhoto } from '../../../lib/trend/series';

const photo = (day: number, value: number | null): ReadPhoto => ({
  day,
  photo: `p${day}`,
  usable: value !== null,
  reasons: value === null ? ['blur'] : [],
  measurements: value === null ? {} : { reach: { value, u: 0.5, unit: 'mm' } },
});

/** A photo on day 4 was refused, and nothing came between day 5 and day 9. */
const COURSE = [photo(1, 3), photo(2, 4), photo(3, 5), photo(4, null), photo(5, 6), photo(9, 7), photo(10, 8)];
const series = describeSeries(buildSeries(COURSE, 'reach', 'mm'));
const words: PlotWords = {
  points: series.points.map(({ day, value, u }) => ({ day, value, U: 2 * u })),
  stretches: series.stretches,
  gapDays: series.gaps.map(({ day }) => day),
  lastDay: 10,
  leastTop: 0,
  events: [],
};

describe('a plot with a refused photo and missed days', () => {
  const plot = trendPlot(words);
  const places = (path: string) => path.split(/[ML]/).slice(1).map((one) => one.split(',').map(Number));

  it('breaks its line at the refused photo and at the missed days', () => {
    expect(plot.lines.map((line) => places(line).length)).toEqual([3, 2]);
    const joined = plot.lines.flatMap(places).map(([across]) => across);
    expect(joined).not.toContain(plot.points[3].acrossMm);
  });

  it('marks the refused photo on the line of the days and draws no value for it', () => {
    const fourth = plot.dayTicks.find(({ text }) => text === '4');
    expect(plot.gapsMm).toEqual([fourth?.atMm]);
    expect(plot.points).toHaveLength(COURSE.length - 1);
  });

  it('has zero on the paper, at the line of the days', () => {
    expect(plot.valueTicks[0]).toEqual({ atMm: plot.baseMm, text: '0' });
  });

  it('draws each band from value − U to value + U on the scale of the ticks', () => {
    const [zero, next] = plot.valueTicks;
    const mmPerUnit = (zero.atMm - next.atMm) / Number(next.text);
    for (const [at, { whisker, downMm }] of plot.points.entries()) {
      expect(plot.baseMm - downMm).toBeCloseTo(words.points[at].value * mmPerUnit, 1);
      expect((whisker?.toMm ?? 0) - (whisker?.fromMm ?? 0)).toBeCloseTo(2 * (words.points[at].U ?? 0) * mmPerUnit, 1);
    }
  });

  it('keeps every value and band on the paper', () => {
    for (const { acrossMm, whisker } of plot.points) {
      expect(acrossMm).toBeGreaterThanOrEqual(plot.leftMm);
      expect(whisker?.fromMm).toBeGreaterThanOrEqual(plot.topMm);
      expect(whisker?.toMm).toBeLessThanOrEqual(plot.baseMm);
    }
  });
});

it('cuts a band at zero, where nothing can be, and says so', () => {
  const [{ whisker }] = trendPlot({ ...words, points: [{ day: 1, value: 2, U: 3 }], stretches: [[1, 1]] }).points;
  expect(whisker).toMatchObject({ toMm: 46, cutAtZero: true });
});

it('gives a value without uncertainty no band, and a point by itself no line', () => {
  const plot = trendPlot({ ...words, points: [{ day: 1, value: 2, U: null }], stretches: [[1, 1]], leastTop: 10 });
  expect(plot.points[0].whisker).toBeNull();
  expect(plot.lines).toEqual([]);
  expect(plot.valueTicks.at(-1)?.text).toBe('10');
});

it('has no scale where it has no value, only zero', () => {
  expect(trendPlot({ ...words, points: [], stretches: [] }).valueTicks.map(({ text }) => text)).toEqual(['0']);
});

it('lifts letters that would lie on one another, and leaves the others', () => {
  const events = [
    { day: 1, letter: 'C' },
    { day: 1.1, letter: 'A' },
    { day: 8, letter: 'M' },
  ];
  expect(trendPlot({ ...words, events }).events.map(({ letter, row }) => [letter, row])).toEqual([
    ['C', 0],
    ['A', 1],
    ['M', 0],
  ]);
});

it.each([1, 7, 15, 40, 200, 1000])('reaches the last day where that is day %i', (lastDay) => {
  expect(Number(trendPlot({ ...words, lastDay }).dayTicks.at(-1)?.text)).toBeGreaterThanOrEqual(lastDay);
});
