import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../../lib/decide/constants';
import { limitsSchema } from '../../../lib/decide/limits-schema';
import { DEFAULT_RULE_BOOK, LIMIT_IDS } from '../../../lib/decide/rule-book';
import { lessSensitiveWords, limitWords } from '../../../lib/report/limit-words';

const problemOf = (limits: object): string => limitsSchema.safeParse(limits).error?.issues[0].message ?? '';

describe('the limits of a clinic', () => {
  it('may be the defaults, or nothing', () => {
    expect(problemOf(DEFAULT_RULE_BOOK.limits)).toBe('');
    expect(problemOf({})).toBe('');
  });

  it.each(LIMIT_IDS)('keep %s within its range, so that no rule is switched off', (id) => {
    const { least, most } = LIMITS[id];
    expect(problemOf({ [id]: least - 0.1 })).toContain(`${id} may lie between ${least} and ${most}`);
    expect(problemOf({ [id]: most + 0.1 })).toContain(`${id} may lie between ${least} and ${most}`);
    expect(problemOf({ [id]: Infinity })).not.toBe('');
    expect(problemOf({ [id]: null })).not.toBe('');
  });

  it('keep their order, also against defaults that were not changed', () => {
    expect(problemOf({ 'pain.riseTwice': 3, 'pain.riseOnce': 3 })).toBe('');
    expect(problemOf({ 'spreading.beforeMm': 2, 'spreading.mm': 1.5 })).toBe('spreading.beforeMm (2) may not come above spreading.mm (1.5).');
    expect(problemOf({ 'spreading.areaMm2': 13 })).toBe('spreading.areaMm2 (13) may not come above spreading.fewAreaMm2 (12).');
    expect(problemOf({ 'spreading.mm': 4, 'spreading.earlyBaseMm': 3 })).toBe('spreading.mm (4) may not come above spreading.earlyBaseMm (3).');
    expect(problemOf({ 'spreading.earlyBaseFromHours': 30, 'spreading.baseFromHours': 24 })).toBe('spreading.earlyBaseFromHours (30) may not come above spreading.baseFromHours (24).');
    expect(problemOf({ 'slow.naoh': 28, 'late.naoh': 28, 'expected.naoh': 18 })).toBe('');
    expect(problemOf({ 'slow.none': 28, 'late.none': 21 })).toBe('slow.none (28) may not come above late.none (21).');
  });

  it('know no other limit', () => {
    expect(problemOf({ 'fever.off': 1 })).not.toBe('');
  });
});

describe('a change that makes a rule hear less', () => {
  const after = (more: object) => lessSensitiveWords(DEFAULT_RULE_BOOK.limits, { ...DEFAULT_RULE_BOOK.limits, ...more });

  it('is said, whichever way that is', () => {
    expect(after({ 'fever.celsius': 38.5 })).toEqual(['Fever: from this temperature on: 38 becomes 38.5 °C. The rule hears less.']);
    expect(after({ 'fever.lowCelsius': 35.5 })).toEqual(['Low temperature: below this: 36 becomes 35.5 °C. The rule hears less.']);
    expect(after({ 'visit.hours': 4 })[0]).toContain('may hear less');
    expect(after({ 'spreading.areaMm2': 12 })).toEqual(['Redness spreads: growth of area, at least: 5 becomes 12 mm². The rule hears less.']);
    expect(after({ 'spreading.earlyBaseMm': 5 })).toEqual(['Redness spreads: growth of reach against such an early visit, or the visit just before: 4 becomes 5 mm. The rule hears less.']);
    for (const hours of [24, 72]) expect(after({ 'spreading.baseFromHours': hours })[0]).toContain('may hear less');
  });

  it('is not said of one that makes it hear more', () => {
    expect(after({ 'fever.celsius': 37.8, 'stalled.dropPercent': 15, 'reachModerate.mm': 15, 'spreading.areaMm2': 0 })).toEqual([]);
  });

  it('has a name of its own for every limit', () => {
    expect(new Set(LIMIT_IDS.map((id) => limitWords(id).name)).size).toBe(LIMIT_IDS.length);
  });
});
