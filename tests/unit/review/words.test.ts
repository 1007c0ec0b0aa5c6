import { describe, expect, it } from 'vitest';
import { DEFAULT_RULE_BOOK } from '../../../lib/decide/rule-book';
import { bookOfVersion } from '../../../lib/review/book-of-version';
import { describeWait, saySpan } from '../../../lib/review/describe-wait';

describe('a wait', () => {
  it.each([
    [0, '0 min'],
    [59.9, '59 min'],
    [60, '1 h'],
    [190, '3 h 10 min'],
    [2879, '47 h 59 min'],
    [2880, '2 days'],
    [-5, '0 min'],
  ])('of %d minutes is said as %s', (minutes, words) => {
    expect(saySpan(minutes)).toBe(words);
  });

  it('is within the limit up to the limit, and over it after', () => {
    expect(describeWait(240, 240)).toEqual({ words: 'waited 4 h, limit 4 h', shareOfLimit: 1, isOver: false });
    expect(describeWait(241, 240)).toMatchObject({ words: 'waited 4 h 1 min, 1 min over the limit of 4 h', isOver: true });
  });

  it('without a limit is never over one', () => {
    expect(describeWait(100_000, null)).toEqual({ words: 'waited 69 days, no limit set', shareOfLimit: null, isOver: false });
  });
});

describe('the rule book of a finding', () => {
  it('has the limits that were in force when it was made', () => {
    const { limits } = bookOfVersion('2026.1 with fever.celsius=37.8 reachModerate.mm=18');
    expect(limits).toEqual({ ...DEFAULT_RULE_BOOK.limits, 'fever.celsius': 37.8, 'reachModerate.mm': 18 });
  });

  it('is the default one where no limit was changed, or one is no longer known', () => {
    expect(bookOfVersion('2026.1')).toEqual(DEFAULT_RULE_BOOK);
    expect(bookOfVersion('no rule')).toEqual(DEFAULT_RULE_BOOK);
    expect(bookOfVersion('2025.9 with gone.mm=3')).toEqual(DEFAULT_RULE_BOOK);
  });
});
