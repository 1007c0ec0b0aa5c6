/** What a growth is compared with, where there are few visits: each edge of it. */
import { describe, expect, it } from 'vitest';
import type { LimitId } from '../../../lib/decide/constants';
import { changeRuleBook, type RuleBook } from '../../../lib/decide/rule-book';
import { limitWords } from '../../../lib/report/limit-words';
import { at, type CheckInSketch, judge, levelsOf, photo } from './invented-course';

type Reach = readonly [hours: number, reach: number];
type Both = readonly [hours: number, area: number, reach: number];

const reaches = (...visits: readonly Reach[]): CheckInSketch[] => visits.map(([hours, reach]) => ({ hours, photo: photo({ reach }) }));
const areas = (...visits: readonly Both[]): CheckInSketch[] => visits.map(([hours, erythemaArea, reach]) => ({ hours, photo: photo({ erythemaArea, reach }) }));
const spreads = (course: readonly CheckInSketch[], more: Parameters<typeof judge>[1] = {}, book?: RuleBook) => levelsOf('spreading', judge(course, more, book));

function bookWith(changes: Partial<Record<LimitId, number>>): RuleBook {
  const changed = changeRuleBook(changes);
  if ('problem' in changed) throw new Error(changed.problem);
  return changed.book;
}

function numberIn(course: readonly CheckInSketch[], name: string): number | undefined {
  const [found] = judge(course).filter(({ rule }) => rule === 'spreading');
  return found.evidence.numbers.find((one) => one.name === name)?.value;
}

describe('a length with one visit from 48 h on to compare with', () => {
  it.each([
    [4.99, []],
    [5, ['today']],
  ])('is compared with that one, whatever earlier photos show: 3 mm at 48 h, then 4, then %f mm gives %j', (newest, levels) => {
    expect(spreads(reaches([48, 3], [72, 4], [96, newest]))).toEqual(levels);
    expect(spreads(reaches([20, 1], [40, 1], [48, 3], [72, 4], [96, newest]))).toEqual(levels);
  });
});

describe('a length with two visits to compare with', () => {
  it.each([
    [4.5, 5.49, []],
    [4.5, 5.5, ['today']],
    [4.49, 5.5, []],
  ])('is compared with their mean: 3 and 4 mm, then %f, then %f mm gives %j', (before, newest, levels) => {
    expect(spreads(reaches([48, 3], [72, 4], [96, before], [120, newest]))).toEqual(levels);
    expect(spreads(reaches([48, 4], [72, 3], [96, before], [120, newest]))).toEqual(levels);
  });

  it('has the mean of both uncertainties, and is no surer for being two', () => {
    const noisy = [[48, 4, 1.2], [72, 3, 0.6], [96, 6, 0.4], [120, 7, 0.4]].map(([hours, reach, u]): CheckInSketch => ({ hours, photo: photo({ reach: [reach, u] }) }));
    expect(numberIn(noisy, 'smallestDetectableChange')).toBeCloseTo(1.96 * Math.hypot(0.9, 0.4), 10);
  });

  it.each([
    [5.99, []],
    [6, ['today']],
  ])('goes back to the running median with a third: 3, 4 and 4 mm, then 5, then %f mm gives %j', (newest, levels) => {
    expect(spreads(reaches([48, 3], [72, 4], [96, 4], [120, 5], [144, newest]))).toEqual(levels);
  });

  it('counts a visit as one of them from 48 h on, and 12 h before the newest', () => {
    // With the visit at 47.9 h as a second one the mean would be 3 mm, and 5 would do.
    expect(spreads(reaches([47.9, 2], [60, 4], [84, 4.9], [108, 5]))).toEqual([]);
    expect(spreads(reaches([48, 2], [60, 4], [84, 4.9], [108, 5]))).toEqual(['today']);
  });
});

describe('an area with few visits to compare with', () => {
  it.each([
    [54, 59.9, []],
    [54, 60, ['today']],
    [53.7, 60, []],
  ])('is compared with the higher of two: 40 and 48 mm², then %f, then %f mm² gives %j', (before, newest, levels) => {
    expect(spreads(areas([48, 40, 3], [72, 48, 3], [96, before, 3.5], [120, newest, 4]))).toEqual(levels);
    expect(spreads(areas([48, 48, 3], [72, 40, 3], [96, before, 3.5], [120, newest, 4]))).toEqual(levels);
  });

  it('is compared with no single one, be there a sign beside it', () => {
    const one = areas([48, 20, 3], [72, 30, 3.5], [96, 40, 4]);
    expect(spreads(one)).toEqual([]);
    expect(spreads([...one.slice(0, 2), { ...one[2], answers: { warmth: true } }])).toEqual([]);
    expect(spreads([...one, ...areas([120, 42, 4.25])])).toEqual(['today']);
  });

  it('goes back to the running median with a third', () => {
    // 40, 52 and 40 mm²: the median is 40, and 50 would be too little over 52.
    expect(spreads(areas([48, 40, 3], [72, 52, 3], [96, 40, 3], [120, 45, 3.5], [144, 50, 4]))).toEqual(['today']);
    expect(spreads(areas([72, 52, 3], [96, 40, 3], [120, 45, 3.5], [144, 50, 4]))).toEqual([]);
  });

  it.each([
    [3.5, 4.24, []],
    [3.5, 4.25, ['today']],
  ])('asks for 1 mm of reach over the mean of its two: 3 and %f mm, then %f mm gives %j', (second, newest, levels) => {
    expect(spreads(areas([48, 20, 3], [72, 20, second], [96, 30, 3.5], [120, 40, newest]))).toEqual(levels);
  });
});

describe('an area of redness that is small', () => {
  const overThree = (newest: number) => areas([48, 12, 3], [72, 12, 3], [96, 12, 3], [120, 14, 3.5], [144, newest, 4]);
  const overTwo = (newest: number) => areas([48, 20, 3], [72, 20, 3], [96, 24, 3.5], [120, newest, 4]);

  it.each([
    [16.9, []],
    [17, ['today']],
  ])('spreads by 5 mm² and no less, although 25 %% are reached before: three times 12 mm², then %f mm² gives %j', (newest, levels) => {
    expect(spreads(overThree(newest))).toEqual(levels);
  });

  it.each([
    [31.9, []],
    [32, ['today']],
  ])('spreads by 12 mm² and no less over two visits only: twice 20 mm², then %f mm² gives %j', (newest, levels) => {
    expect(spreads(overTwo(newest))).toEqual(levels);
  });

  it('follows the limits of the book', () => {
    const over = (course: typeof overTwo, limits: Parameters<typeof bookWith>[0], newest: number) => spreads(course(newest), {}, bookWith(limits));
    const none = { 'spreading.areaMm2': 0 };
    expect([over(overThree, none, 14.9), over(overThree, none, 15)]).toEqual([[], ['today']]);
    const few = { 'spreading.fewAreaMm2': 7 };
    expect([over(overTwo, few, 26.9), over(overTwo, few, 27)]).toEqual([[], ['today']]);
  });
});

describe('two early photos', () => {
  it.each([
    [6.99, []],
    [7, ['today']],
  ])('are as good as the higher of them: 1 and 3 mm, then 4.9, then %f mm gives %j', (newest, levels) => {
    expect(spreads(reaches([24, 1], [36, 3], [126, 4.9], [171, newest]))).toEqual(levels);
    expect(spreads(reaches([24, 3], [36, 1], [126, 4.9], [171, newest]))).toEqual(levels);
  });

  it('are as good as the earlier where both show the same', () => {
    expect(numberIn(reaches([24, 2], [36, 2], [126, 4.9], [171, 7]), 'elapsed')).toBe(147);
  });
});

describe('a length with nothing but the visit before', () => {
  it.each([
    [4.99, []],
    [5, ['today']],
  ])('asks for 4 mm over it, and for no second witness: 1 mm, then %f mm gives %j', (newest, levels) => {
    expect(spreads(reaches([50, 1], [98, newest]))).toEqual(levels);
    expect(spreads(reaches([30, 1], [98, newest]))).toEqual(levels);
  });

  it.each([
    [86.1, []],
    [86, ['today']],
  ])('needs it to be 12 h older: one at %f h, the newest at 98 h gives %j', (hours, levels) => {
    expect(spreads(reaches([hours, 1], [98, 5]))).toEqual(levels);
  });

  it.each([
    [23.9, []],
    [24, ['today']],
  ])('needs it to be from 24 h on: at %f h %j', (hours, levels) => {
    expect(spreads(reaches([hours, 1], [98, 5]))).toEqual(levels);
  });

  it.each([
    [72, []],
    [72.1, ['today']],
  ])('is not judged before day 3 is over: at %f h %j', (hours, levels) => {
    expect(spreads(reaches([50, 1], [hours, 6]))).toEqual(levels);
  });

  it.each([
    [120, []],
    [120.1, ['today']],
  ])('is not judged before day 5 is over after a chemical without a sign: at %f h %j', (hours, levels) => {
    expect(spreads(reaches([98, 1], [hours, 6]), { procedure: { matricectomy: 'phenol60' } })).toEqual(levels);
  });

  it('is judged from day 3 on after a chemical with a sign', () => {
    const withSign = (hours: number): CheckInSketch[] => [...reaches([50, 1]), { hours, answers: { warmth: true }, photo: photo({ reach: 5 }) }];
    expect(spreads(withSign(72), { procedure: { matricectomy: 'phenol60' } })).toEqual([]);
    expect(spreads(withSign(72.1), { procedure: { matricectomy: 'phenol60' } })).toEqual(['today']);
  });

  it.each([
    [6.54, []],
    [6.55, ['today']],
  ])('asks for the smallest detectable change too, 5.54 mm with u 2 mm: 1 mm, then %f mm gives %j', (newest, levels) => {
    const noisy = [[50, 1], [98, newest]].map(([hours, reach]): CheckInSketch => ({ hours, photo: photo({ reach: [reach, 2] }) }));
    expect(spreads(noisy)).toEqual(levels);
  });

  it('is not compared with it where an early photo can be the base, nor where a later one can', () => {
    expect(spreads(reaches([30, 3], [74, 1], [98, 5]))).toEqual([]);
    expect(spreads(reaches([50, 3], [74, 1], [98, 5]))).toEqual([]);
    expect(spreads(reaches([50, 3], [74, 3], [98, 1], [122, 5]))).toEqual([]);
  });

  it('does not mind a photo from before 24 h', () => {
    expect(spreads(reaches([10, 5], [74, 1], [98, 5]))).toEqual(['today']);
  });

  it('never takes a claimed u below 0.4 mm at its word', () => {
    const sure = [[50, 1], [98, 5]].map(([hours, reach]): CheckInSketch => ({ hours, photo: photo({ reach: [reach, 0.01] }) }));
    expect(numberIn(sure, 'smallestDetectableChange')).toBeCloseTo(1.96 * Math.hypot(0.4, 0.4), 10);
  });

  it('reads the reach toward the ankle the same way', () => {
    const proximal = (newest: number) => levelsOf('spreading-proximal', judge([[50, 1], [98, newest]].map(([hours, proximalReach]) => ({ hours, photo: photo({ proximalReach }) }))));
    expect([proximal(4.99), proximal(5)]).toEqual([[], ['today']]);
  });

  it('follows the limits of the book', () => {
    const withBook = (changes: Partial<Record<LimitId, number>>, hours: number, newest: number) => spreads(reaches([hours, 1], [98, newest]), {}, bookWith(changes));
    expect([withBook({ 'spreading.earlyBaseMm': 6 }, 50, 6.9), withBook({ 'spreading.earlyBaseMm': 6 }, 50, 7)]).toEqual([[], ['today']]);
    expect([withBook({ 'spreading.earlyBaseFromHours': 30 }, 29.9, 5), withBook({ 'spreading.earlyBaseFromHours': 30 }, 30, 5)]).toEqual([[], ['today']]);
    expect([withBook({ 'spreading.baseOlderHours': 24 }, 74.1, 5), withBook({ 'spreading.baseOlderHours': 24 }, 74, 5)]).toEqual([[], ['today']]);
  });
});

describe('a length with three visits to compare with', () => {
  it.each([
    [4, 4.5, 5],
    [4, 5, 4.5],
    [4.5, 4, 5],
    [4.5, 5, 4],
    [5, 4, 4.5],
    [5, 4.5, 4],
  ])('is compared with the middle one in whatever order: %f, %f and %f mm', (first, second, third) => {
    const then = (newest: number) => spreads(reaches([48, first], [72, second], [96, third], [120, 5.5], [144, newest]));
    expect([then(6.49), then(6.5)]).toEqual([[], ['today']]);
  });
});

describe('a growth that only a sign can confirm', () => {
  const grown = reaches([48, 3], [72, 3], [96, 3], [120, 3], [144, 5]);
  const warmAt = (hours: number): CheckInSketch => ({ hours, answers: { warmth: true } });

  it.each([
    [180, [180]],
    [180.1, []],
  ])('is heard when the sign is reported within 36 h of the photo: grown at 144 h, warm at %f h gives %j', (hours, raisedAt) => {
    expect(judge([...grown, warmAt(hours)]).filter(({ rule }) => rule === 'spreading').map((one) => one.at)).toEqual(raisedAt.map(at));
  });

  it.each([
    [116, [116]],
    [116.1, []],
  ])('is heard as long after a chemical, with nothing but the visit before: grown at 80 h, warm at %f h gives %j', (hours, raisedAt) => {
    const found = judge([...reaches([50, 1], [80, 5]), warmAt(hours)], { procedure: { matricectomy: 'phenol60' } });
    expect(found.filter(({ rule }) => rule === 'spreading').map((one) => one.at)).toEqual(raisedAt.map(at));
  });
});

it.each([
  [150, [144, 176]],
  [180, [144]],
])('a growth that a person has looked at is raised again by an answer that came later: looked at %f h, answered at 176 h', (lookedAt, raisedAt) => {
  const course: CheckInSketch[] = [...reaches([48, 3], [72, 3], [96, 3], [120, 4], [144, 5]), { hours: 176, answers: { warmth: true } }];
  const found = judge(course, { nowHours: 190, resolutions: [{ rule: 'spreading', at: at(lookedAt), by: 'nurse', reason: 'looked at' }] });
  expect(found.filter(({ rule }) => rule === 'spreading').map((one) => one.at)).toEqual(raisedAt.map(at));
});

describe('which visits may be compared with', () => {
  it.each<[id: LimitId, hears: number, hearsLess: number, course: readonly Reach[]]>([
    ['spreading.baseFromHours', 48, 72, [[50, 3], [74, 4], [98, 5]]],
    ['spreading.baseFromHours', 48, 24, [[30, 5], [50, 3], [74, 4], [98, 5]]],
    ['spreading.earlyBaseFromHours', 24, 36, [[30, 1], [74, 2], [98, 5]]],
    ['spreading.earlyBaseFromHours', 36, 24, [[30, 3], [74, 1], [98, 5]]],
    ['spreading.baseOlderHours', 12, 24, [[50, 3], [66, 4], [72.5, 5]]],
    ['spreading.baseOlderHours', 24, 12, [[50, 3], [80, 5], [86, 4], [98, 5]]],
  ])('decides either way, as the rule book says of %s: %f hears what %f does not', (id, hears, hearsLess, course) => {
    expect([hears, hearsLess].map((value) => spreads(reaches(...course), {}, bookWith({ [id]: value })))).toEqual([['today'], []]);
    expect(limitWords(id).less).toBe('either');
  });
});
