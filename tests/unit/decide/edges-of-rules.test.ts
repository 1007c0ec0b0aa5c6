/** Edges that decide what a rule makes of half-answered questions, of several readings, and of a person's word. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULE_BOOK, changeRuleBook } from '../../../lib/decide/rule-book';
import { answeredClean } from '../../../lib/decide/answered';
import { LIMITS } from '../../../lib/decide/constants';
import { at, type CheckInSketch, judge, levelsOf, type Numbers, photo } from './invented-course';

const seen = (hours: number, numbers: Numbers, answers = {}): CheckInSketch => ({ hours, answers, photo: photo(numbers) });
const said = (hours: number, answers: CheckInSketch['answers']): CheckInSketch => ({ hours, answers });
const PUS = { dischargeColour: 'green', dischargeConsistency: 'thick' } as const;
const DRY = { wetness: 'dry', dischargeColour: 'none', dischargeConsistency: 'none' } as const;
const dryAt = (hours: number): CheckInSketch => ({ hours, answers: DRY, photo: photo({ rawArea: 'noRegionFound' }) });

describe('a dressing that came off clean', () => {
  it.each([
    [{}, null],
    [{ wetness: 'dry' }, true],
    [{ wetness: 'damp' }, false],
    [{ dischargeColour: 'none' }, true],
    [{ dischargeConsistency: 'none' }, true],
    [{ dischargeColour: 'clear' }, false],
    [{ dischargeConsistency: 'watery' }, false],
    [{ wetness: 'dry', dischargeColour: 'clear' }, false],
    [{ wetness: 'dry', dischargeColour: 'none', dischargeConsistency: 'watery' }, false],
    [{ wetness: 'wet', dischargeColour: 'none', dischargeConsistency: 'none' }, false],
  ] as const)('%j: %s', (answers, clean) => {
    expect(answeredClean({ answers })).toBe(clean);
  });
});

describe('several answers of one visit', () => {
  it('count when one of them says yes', () => {
    expect(levelsOf('bleeding', judge([said(50, { bleedingAfterPressure: true }), said(51, { bleedingAfterPressure: false })]))).toEqual(['today']);
    expect(levelsOf('purulent', judge([said(50, PUS), said(51, { dischargeColour: 'none', dischargeConsistency: 'none' })]))).toEqual(['soon']);
  });

  it('have the strongest pain of the visit, and a visit without pain has none', () => {
    const rising = [said(80, { pain: 1 }), said(100, { pain: 1 }), said(124, { pain: 2 }), said(125, { pain: 6 })];
    expect(levelsOf('pain-rising', judge(rising))).toEqual(['soon']);
    expect(levelsOf('pain-rising', judge([said(80, { pain: 1 }), said(100, { pain: 1 }), said(124, { warmth: true })]))).toEqual([]);
  });
});

describe('pain', () => {
  const after = (...pains: readonly number[]) => levelsOf('pain-rising', judge(pains.map((pain, visit) => said(80 + 24 * visit, { pain }))));

  it('needs two reports to rise from', () => {
    expect(after(6)).toEqual([]);
    expect(after(0, 9)).toEqual([]);
    expect(after(0, 0, 9)).toEqual(['soon']);
  });

  it('rises by the limits of the book, once or twice', () => {
    const { limits } = DEFAULT_RULE_BOOK;
    const [once, twice] = [limits['pain.riseOnce'], limits['pain.riseTwice']];
    expect(after(1, 1, 1 + once)).toEqual(['soon']);
    expect(after(1, 1, once)).toEqual([]);
    expect(after(1, 1, 1 + twice, 1 + twice)).toEqual(['soon']);
    expect(after(1, 1, 1 + twice, twice)).toEqual([]);
    expect(after(1, 1, twice, 1 + twice)).toEqual([]);
  });
});

describe('the area of redness', () => {
  const grown = (areas: readonly number[], reaches: readonly number[], answers = {}) =>
    judge(areas.map((erythemaArea, visit) => seen(48 + 24 * visit, { erythemaArea, reach: reaches[visit] }, visit === areas.length - 1 ? answers : {})));

  it('spreads by a quarter together with reach, seen at the visit before', () => {
    const [finding] = grown([20, 20, 20, 20, 30, 31], [3, 3, 3, 3, 3.6, 4.2]).filter(({ rule }) => rule === 'spreading');
    expect(finding.sentence).toMatch(/^The area of redness grew 11 mm² in 120 h, smallest change we can see is \d\.\d mm²\.$/);
    expect(finding.evidence.numbers.map(({ name, unit }) => [name, unit])).toEqual([['newest', 'mm2'], ['before', 'mm2'], ['lowestRunningMedian', 'mm2'], ['growth', 'mm2'], ['smallestDetectableChange', 'mm2'], ['elapsed', 'h']]);
    expect(finding.evidence.checkIns).toEqual([]);
  });

  it('does not spread where reach stays, or where it grew by less than a quarter', () => {
    const spreads = (areas: readonly number[], reaches: readonly number[]) => levelsOf('spreading', grown(areas, reaches));
    expect(spreads([20, 20, 20, 20, 30, 31], [3, 3, 3, 3, 3, 3.9])).toEqual([]);
    expect(spreads([20, 20, 20, 20, 24, 24.9], [3, 3, 3, 3, 3.6, 4.2])).toEqual([]);
    expect(spreads([20, 20, 20, 20, 22, 31], [3, 3, 3, 3, 3.6, 4.2])).toEqual([]);
    expect(spreads([0, 0, 0, 0, 0, 31], [3, 3, 3, 3, 3.6, 4.2])).toEqual([]);
  });

  it('spreads at once with another sign, and says which', () => {
    const [finding] = grown([20, 20, 20, 20, 20, 31], [3, 3, 3, 3, 3, 4.2], { warmth: true, spreadingSeen: true }).filter(({ rule }) => rule === 'spreading');
    expect(finding.sentence).toMatch(/, and there is .+, .+\.$/);
    expect(finding.evidence.checkIns).toEqual([at(168)]);
  });
});

describe('growth', () => {
  const reaches = (...values: readonly number[]) => levelsOf('spreading', judge(values.map((reach, visit) => seen(48 + 24 * visit, { reach }))));

  it('is measured from the lowest running median, wherever it lies', () => {
    expect(reaches(6, 6, 6, 3, 3, 3, 5.5, 5.5)).toEqual(['today']);
    expect(reaches(3, 3, 3, 6, 6, 6, 6)).toEqual(['today']);
    expect(reaches(6, 6, 6, 6, 6, 6, 6)).toEqual([]);
  });

  it('does not take one low reading for a level', () => {
    expect(reaches(6, 6, 3, 6, 6, 6.5, 6.5)).toEqual([]);
  });

  it('is no news when the newest reading is old', () => {
    const course = [...[48, 72, 96, 120].map((hours) => seen(hours, { reach: 3 })), seen(144, { reach: 6 }), seen(168, { reach: 6.5 })];
    const [finding] = judge(course).filter(({ rule }) => rule === 'spreading');
    expect(finding.at).toBe(at(168));
    const late = [...[48, 72, 96, 120].map((hours) => seen(hours, { reach: 3 })), seen(144, { reach: 6 }), ...[192, 216, 240, 264, 288].map((hours) => said(hours, { warmth: true }))];
    expect(judge(late).filter(({ rule, at: when }) => rule === 'spreading' && when > at(240))).toEqual([]);
  });
});

describe('a person’s word', () => {
  const word = (rule: string, hours: number, more = {}) => ({ rule, at: at(hours), by: 'nurse', reason: 'looked at', ...more });

  it('is heard in the order of time, whatever order it was written in', () => {
    const course = [said(50, PUS), said(74, PUS), said(98, PUS)];
    const findings = judge(course, { nowHours: 100, resolutions: [word('purulent', 80), word('purulent', 55)] });
    expect(findings.filter(({ rule }) => rule === 'purulent').map(({ closed }) => closed?.at ?? null)).toEqual([at(55), at(80), null]);
  });

  it('from after this moment is not known yet', () => {
    expect(judge([said(50, PUS)], { nowHours: 60, resolutions: [word('purulent', 61)] })[0].closed).toBeNull();
    expect(judge([said(50, PUS)], { nowHours: 61, resolutions: [word('purulent', 60)] })[0].closed?.by).toBe('nurse');
  });

  it('confirms dryness, after which nobody is silent and relapse is still seen', () => {
    const confirmed = { nowHours: 400, resolutions: [word('dry', 230)] };
    // Before the first check-in it was silent for 200 h; that was raised at hour 60 either way.
    const silences = (more: Parameters<typeof judge>[1]) => judge([dryAt(200), dryAt(224)], more).filter(({ rule }) => rule === 'silent').map(({ at: when }) => when);
    expect(silences(confirmed)).toEqual([at(60)]);
    expect(silences({ nowHours: 400 })).toEqual([at(60), at(284)]);
    const wet = said(300, { wetness: 'wet', dischargeColour: 'clear', dischargeConsistency: 'watery' });
    expect(levelsOf('relapse', judge([dryAt(200), dryAt(224), wet], confirmed))).toEqual(['soon']);
  });

  it('can dismiss dryness: then nothing can relapse', () => {
    const wet = said(300, { wetness: 'wet', dischargeColour: 'clear', dischargeConsistency: 'watery' });
    expect(levelsOf('relapse', judge([dryAt(200), dryAt(224), wet], { resolutions: [word('dry', 230, { outcome: 'dismissed' })] }))).toEqual([]);
  });
});

describe('silence', () => {
  it('ends with the next check-in, and says so; other findings stay open', () => {
    const findings = judge([said(30, PUS), said(200, { warmth: true })]);
    const silent = findings.find(({ rule }) => rule === 'silent');
    expect(silent?.closed).toEqual({ at: at(200), by: 'silent', reason: 'A check-in came.' });
    expect(findings.find(({ rule }) => rule === 'purulent')?.closed).toBeNull();
  });

  it('has one finding for each time', () => {
    const findings = judge([said(30, {}), said(200, {}), said(230, {})], { nowHours: 400 });
    expect(findings.filter(({ rule }) => rule === 'silent').map(({ at: when, closed }) => [when, closed?.at ?? null])).toEqual([[at(90), at(200)], [at(290), null]]);
  });
});

describe('dryness', () => {
  it('that ended says by what', () => {
    const wet = said(248, { wetness: 'wet', dischargeColour: 'clear', dischargeConsistency: 'watery' });
    expect(judge([dryAt(200), dryAt(224), wet]).find(({ rule }) => rule === 'dry')?.closed).toEqual({ at: at(248), by: 'relapse', reason: 'It is no longer dry.' });
  });

  it('is not asked about a wet answer without discharge alone', () => {
    expect(levelsOf('relapse', judge([dryAt(200), dryAt(224), said(248, { wetness: 'wet', dischargeColour: 'none' })]))).toEqual([]);
    expect(levelsOf('relapse', judge([dryAt(200), dryAt(224), said(248, { wetness: 'wet' })]))).toEqual([]);
    expect(levelsOf('relapse', judge([dryAt(200), dryAt(224), said(248, { wetness: 'damp', dischargeColour: 'clear' })]))).toEqual([]);
  });

  it('is broken by one of two answers of the same visit', () => {
    expect(levelsOf('dry', judge([dryAt(200), dryAt(224), said(225, { wetness: 'damp' })], { nowHours: 226 }))).toEqual(['visit']);
    expect(levelsOf('dry', judge([dryAt(200), said(223, { wetness: 'damp' }), dryAt(224)]))).toEqual([]);
  });
});

describe('the rule book', () => {
  it.each(Object.entries(LIMITS))('takes both ends of the range of %s, and nothing beyond', (id, limit) => {
    for (const value of [limit.least, limit.most]) expect(changeRuleBook({ [id]: value })).toHaveProperty('book');
    for (const value of [limit.least - 0.01, limit.most + 0.01]) expect(changeRuleBook({ [id]: value })).toHaveProperty('problem');
  });

  it('is called by its own version where nothing was changed', () => {
    expect(changeRuleBook({})).toEqual({ book: DEFAULT_RULE_BOOK });
  });
});

describe('a tender corner', () => {
  const corner = (hours: number, answers: CheckInSketch['answers'], reach: number | readonly [number, number] = 2) => seen(hours, { proximalReach: reach }, answers);

  it('needs the question asked on both visits, a photo, and redness beyond its uncertainty', () => {
    const levels = (...course: readonly CheckInSketch[]) => levelsOf('spike-suspect', judge(course));
    expect(levels(corner(500, { cornerTender: true }), corner(530, { cornerTender: true }))).toEqual(['visit']);
    expect(levels(corner(500, { cornerTender: true }), corner(515, { pain: 1 }), corner(530, { cornerTender: true }))).toEqual(['visit']);
    expect(levels(corner(500, { cornerTender: true }), said(515, { cornerTender: false }), corner(530, { cornerTender: true }))).toEqual(['visit']);
    expect(levels(corner(500, { cornerTender: false }), corner(530, { cornerTender: true }))).toEqual([]);
    expect(levels(corner(500, { cornerTender: true }, [1, 0.5]), corner(530, { cornerTender: true }))).toEqual([]);
    expect(levels(corner(530, { cornerTender: true }))).toEqual([]);
  });
});

describe('reach of before the newest visits', () => {
  it('counts beside pus while it is fresh', () => {
    const { limits } = DEFAULT_RULE_BOOK;
    const after = (gap: number) => levelsOf('purulent', judge([seen(100, { reach: 9 }), said(100 + gap, PUS)]));
    expect(after(limits['fresh.hours'])).toEqual(['today']);
    expect(after(limits['fresh.hours'] + 0.5)).toEqual(['soon']);
  });
});
