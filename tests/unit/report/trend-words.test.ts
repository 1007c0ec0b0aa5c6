import { describe, expect, it } from 'vitest';
import { trendWords } from '../../../lib/report/trend-words';
import { describeSeries } from '../../../lib/trend/describe-series';
import type { SeriesGap } from '../../../lib/trend/series';

const wordsOf = (values: readonly number[], gaps: readonly SeriesGap[] = []) =>
  trendWords(describeSeries({ unit: 'mm', points: values.map((value, day) => ({ day, value, u: 0.5, photo: `p${day}` })), gaps }), { unit: 'mm', of: 'photo' });

describe('the words of a series', () => {
  it.each([1, 2, 3])('say that %i photos are too few for a trend', (count) => {
    expect(wordsOf(Array.from({ length: count }, (_, at) => at + 1)).said[1]).toBe(`Too few photos for a trend: ${count} of the 4 that it takes.`);
  });

  it('name a rise of four photos with its exact tail, one of twenty-four orders', () => {
    expect(wordsOf([1, 2, 3, 4]).said[1]).toMatch(/^Rises over 4 photos \(one-sided Mann–Kendall p = 0\.042\)\. Slope 1 mm a day/);
  });

  it('claim no trend where none can be shown', () => {
    expect(wordsOf([2, 1, 2, 1, 2]).said[1]).toMatch(/^No trend can be shown over 5 photos/);
  });

  it('give the newest value with k = 2', () => {
    expect(wordsOf([3, 4.25]).said[0]).toBe('Newest: 4.3 ± 1 mm on day 1.0.');
  });

  it('say every gap with its day and reason', () => {
    const gaps = [
      { day: 1.5, photo: 'x', reason: 'blur' },
      { day: 2, photo: 'y', reason: 'contrastTooLow' },
    ];
    expect(wordsOf([3, 4], gaps).said).toContain('2 gaps: day 1.5 (blur); day 2.0 (contrast too low).');
    expect(wordsOf([3, 4]).more).toContain('No gaps.');
  });

  it('say of a change that cannot be seen that it may be none', () => {
    expect(wordsOf([3, 3.4]).more[0]).toBe('Last change +0.4 mm; smallest change we can see is 1.4 mm, so it may be none.');
    expect(wordsOf([3, 6]).more[0]).not.toContain('may be none');
  });

  it('have no zero for nothing', () => {
    expect(wordsOf([]).said[0]).toBe('No value yet.');
  });
});
