import { describe, expect, it } from 'vitest';
import { changeRuleBook } from '../../../lib/decide/rule-book';
import { type CheckInSketch, judge, levelsOf, photo, refused } from './invented-course';

const reachAt = (hours: number, reach: number, answers = {}): CheckInSketch => ({ hours, answers, photo: photo({ reach }) });
/** Four quiet visits, so that a running median of three stands when the fifth is judged. */
const QUIET = [48, 72, 96, 120].map((hours) => reachAt(hours, 3));

describe('reach-moderate', () => {
  it.each([
    [19.1, 0.4, []],
    [19.2, 0.4, ['today']],
    [19.3, 0.4, ['today']],
  ])('takes %f mm with u %f mm as the wider reading: %j', (reach, u, levels) => {
    expect(levelsOf('reach-moderate', judge([{ hours: 10, photo: photo({ reach: [reach, u] }) }]))).toEqual(levels);
  });

  it('counts the unrolled reach where it was measured', () => {
    expect(levelsOf('reach-moderate', judge([{ hours: 10, photo: photo({ reach: 12, unrolledReach: 21 }) }]))).toEqual(['today']);
  });

  it('is raised where redness crosses the joint crease, by distance or as seen', () => {
    expect(levelsOf('reach-moderate', judge([{ hours: 10, photo: photo({ proximalReach: [13, 0.5], creaseDistance: [14, 0] }) }]))).toEqual(['today']);
    expect(levelsOf('reach-moderate', judge([{ hours: 10, photo: photo({ proximalReach: [12.9, 0.5], creaseDistance: [14, 0] }) }]))).toEqual([]);
    expect(levelsOf('reach-moderate', judge([{ hours: 10, photo: photo({ creaseDistance: [0, 0.5] }) }]))).toEqual(['today']);
  });

  it('takes nothing from a refused photo', () => {
    expect(levelsOf('reach-moderate', judge([{ hours: 10, photo: { ...photo({ reach: 30 }), reasons: ['blur'] } }]))).toEqual([]);
  });
});

describe('reach-mild', () => {
  it.each([
    [5.8, []],
    [5.81, ['soon']],
  ])('needs reach less its expanded uncertainty beyond 5 mm: %f ± 0.8 gives %j', (reach, levels) => {
    expect(levelsOf('reach-mild', judge([reachAt(80, reach, { warmth: true })]))).toEqual(levels);
  });

  it.each([
    [72, []],
    [72.1, ['soon']],
  ])('begins after day 3: at %f h %j', (hours, levels) => {
    expect(levelsOf('reach-mild', judge([reachAt(hours, 8, { warmth: true })]))).toEqual(levels);
  });

  it.each([
    [{ warmth: true }],
    [{ swelling: true }],
    [{ spreadingSeen: true }],
    [{ dischargeColour: 'yellow', dischargeConsistency: 'thick' }],
  ] as const)('counts %j as one more sign', (answers) => {
    expect(levelsOf('reach-mild', judge([reachAt(80, 8, answers)]))).toEqual(['soon']);
  });

  it('is not raised by redness alone, and not by swelling that was there from the first day', () => {
    expect(levelsOf('reach-mild', judge([reachAt(80, 8)]))).toEqual([]);
    expect(levelsOf('reach-mild', judge([{ hours: 20, answers: { swelling: true } }, reachAt(80, 8, { swelling: true })]))).toEqual([]);
    expect(levelsOf('reach-mild', judge([{ hours: 20, answers: { swelling: true } }, { hours: 50, answers: { swelling: false } }, reachAt(80, 8, { swelling: true })]))).toEqual(['soon']);
  });

  it('is for today in a foot at risk, and not raised once more', () => {
    const findings = judge([reachAt(80, 8, { warmth: true })], { risks: ['diabetes'] });
    expect(levelsOf('reach-mild', findings)).toEqual(['today']);
    expect(findings.find(({ rule }) => rule === 'reach-mild')?.raisedForRisk).toBe(false);
  });
});

describe('spreading by reach', () => {
  const grown = (before: number, newest: number, u = 0.4) => [...QUIET.slice(0, 3), { hours: 120, photo: photo({ reach: [before, u] }) }, { hours: 144, photo: photo({ reach: [newest, u] }) }];

  it.each([
    [4, 4.99, []],
    [4, 5, ['today']],
    [4, 5.01, ['today']],
    [3.99, 6, []],
  ])('needs 2 mm now and 1 mm at the visit before: 3 mm, then %f, then %f mm gives %j', (before, newest, levels) => {
    expect(levelsOf('spreading', judge(grown(before, newest)))).toEqual(levels);
  });

  it('needs the smallest detectable change too: 2 mm are not seen with u 1 mm', () => {
    const noisy = (newest: number) => [48, 72, 96].map((hours) => ({ hours, photo: photo({ reach: [3, 1] }) })).concat([{ hours: 120, photo: photo({ reach: [4.5, 1] }) }, { hours: 144, photo: photo({ reach: [newest, 1] }) }]);
    expect(levelsOf('spreading', judge(noisy(5.77)))).toEqual([]);
    expect(levelsOf('spreading', judge(noisy(5.78)))).toEqual(['today']);
  });

  it('never takes a claimed u below 0.4 mm at its word', () => {
    const [finding] = judge(grown(4, 5, 0.01)).filter(({ rule }) => rule === 'spreading');
    expect(finding.evidence.numbers.find(({ name }) => name === 'smallestDetectableChange')?.value).toBeCloseTo(1.96 * Math.hypot(0.4, 0.4), 10);
  });

  it('takes one more sign instead of the visit before', () => {
    expect(levelsOf('spreading', judge([...QUIET, reachAt(144, 5)]))).toEqual([]);
    expect(levelsOf('spreading', judge([...QUIET, reachAt(144, 5, { warmth: true })]))).toEqual(['today']);
  });

  it('takes a second photo of the same visit instead of the visit before, where both show it', () => {
    expect(levelsOf('spreading', judge([...QUIET, reachAt(144, 5), reachAt(144.2, 5.4)]))).toEqual(['today']);
    expect(levelsOf('spreading', judge([...QUIET, reachAt(144, 4.9), reachAt(144.2, 5.4)]))).toEqual([]);
  });

  it('is not moved by one wild photo among the earlier ones, high or low', () => {
    const wild = (reach: number) => [reachAt(48, 3), reachAt(72, reach), reachAt(96, 3), reachAt(120, 3), reachAt(144, 4), reachAt(168, 5)];
    expect(levelsOf('spreading', judge(wild(0.2)))).toEqual(['today']);
    expect(levelsOf('spreading', judge(wild(12)))).toEqual(['today']);
    expect(levelsOf('spreading', judge([reachAt(48, 3), reachAt(72, 0.2), reachAt(96, 3), reachAt(120, 3), reachAt(144, 3)]))).toEqual([]);
  });

  it('takes no photo from before 48 h as a base for 2 mm', () => {
    expect(levelsOf('spreading', judge([reachAt(24, 1), reachAt(36, 1), reachAt(47, 1), reachAt(76, 4), reachAt(100, 4.9)]))).toEqual([]);
  });

  it('takes a photo without a region as no zero of a growth', () => {
    const none = (hours: number) => ({ hours, photo: photo({ reach: 'noRegionFound', erythemaArea: 'noRegionFound' }) });
    expect(levelsOf('spreading', judge([none(48), none(72), none(96), none(120), reachAt(144, 3), reachAt(168, 3.2)]))).toEqual([]);
  });

  it('waits for 120 h after a chemical, unless there is a sign', () => {
    const early = [reachAt(50, 2), reachAt(74, 4), reachAt(98, 6)];
    expect(levelsOf('spreading', judge(early))).toEqual(['today']);
    for (const matricectomy of ['phenol30', 'phenol60', 'naoh', 'unknown'] as const) expect(levelsOf('spreading', judge(early, { procedure: { matricectomy } }))).toEqual([]);
    expect(levelsOf('spreading', judge([...early.slice(0, 2), reachAt(98, 6, { warmth: true })], { procedure: { matricectomy: 'phenol60' } }))).toEqual(['today']);
    expect(levelsOf('spreading', judge([...early, reachAt(120.1, 7)], { procedure: { matricectomy: 'phenol60' } }))).toEqual(['today']);
  });

  it('compares an unrolled reach with unrolled ones only', () => {
    const projected = [48, 72, 96].map((hours) => ({ hours, photo: photo({ reach: 2 }) }));
    const unrolled = [120, 144].map((hours) => ({ hours, photo: photo({ reach: 2, unrolledReach: 5 }) }));
    expect(levelsOf('spreading', judge([...projected, ...unrolled]))).toEqual([]);
  });

  it('stops at today in a foot at risk: a measurement never gives now', () => {
    expect(levelsOf('spreading', judge(grown(4, 5), { risks: ['dialysis'] }))).toEqual(['today']);
  });

  it('says its numbers in plain words', () => {
    const [finding] = judge(grown(4.5, 6.1)).filter(({ rule }) => rule === 'spreading');
    expect(finding.sentence).toBe('Reach grew 3.1 mm in 96 h, smallest change we can see is 1.1 mm.');
    expect(finding.evidence.photos).toHaveLength(3);
  });
});

describe('spreading from an early photo, where no later one can be the base', () => {
  /** One early photo, the visit before, and the newest. */
  const early = (hours: number, reach: number, before: number, newest: number) => [reachAt(hours, reach), reachAt(126, before), reachAt(171, newest)];

  it.each([
    [5.59, []],
    [5.6, ['today']],
    [10.2, ['today']],
  ])('asks for 4 mm: 1.6 mm at 26 h, then %f mm gives %j', (newest, levels) => {
    expect(levelsOf('spreading', judge(early(26, 1.6, 5, newest)))).toEqual(levels);
  });

  it.each([
    [23.9, []],
    [24, ['today']],
    [47.9, ['today']],
  ])('takes a photo from 24 h on: at %f h %j', (hours, levels) => {
    expect(levelsOf('spreading', judge(early(hours, 1, 4, 5)))).toEqual(levels);
  });

  it('asks for 1 mm at the visit before, or one more sign, or a second photo that shows all 4 mm', () => {
    expect(levelsOf('spreading', judge(early(26, 1, 1.99, 5)))).toEqual([]);
    expect(levelsOf('spreading', judge(early(26, 1, 2, 5)))).toEqual(['today']);
    expect(levelsOf('spreading', judge([...early(26, 1, 1, 5).slice(0, 2), reachAt(171, 5, { warmth: true })]))).toEqual(['today']);
    expect(levelsOf('spreading', judge([...early(26, 1, 1, 5), reachAt(171.2, 4.9)]))).toEqual([]);
    expect(levelsOf('spreading', judge([...early(26, 1, 1, 5), reachAt(171.2, 5)]))).toEqual(['today']);
  });

  it('asks for the smallest detectable change too', () => {
    const noisy = (newest: number) => [26, 126, 171].map((hours, visit) => ({ hours, photo: photo({ reach: [[1, 4, newest][visit], 2] }) }));
    expect(levelsOf('spreading', judge(noisy(6.5)))).toEqual([]);
    expect(levelsOf('spreading', judge(noisy(6.6)))).toEqual(['today']);
  });

  it('is not asked where a visit from 48 h on can be the base, be it a high one', () => {
    expect(levelsOf('spreading', judge([reachAt(26, 1), reachAt(48, 4), reachAt(126, 4.9), reachAt(171, 5.9)]))).toEqual([]);
    expect(levelsOf('spreading', judge([reachAt(26, 1), reachAt(47.9, 1), reachAt(126, 5), reachAt(171, 5.9)]))).toEqual(['today']);
  });

  it('begins no earlier than the rule does: after day 3, after day 5 where the matrix was treated', () => {
    const grown = (hours: number) => [reachAt(26, 1), reachAt(49, 4), reachAt(hours, 6)];
    expect(levelsOf('spreading', judge(grown(72)))).toEqual([]);
    expect(levelsOf('spreading', judge(grown(72.1)))).toEqual(['today']);
    expect(levelsOf('spreading', judge(grown(119), { procedure: { matricectomy: 'phenol60' } }))).toEqual([]);
  });

  it('takes the median of three early photos', () => {
    expect(levelsOf('spreading', judge([reachAt(24, 1), reachAt(32, 1), reachAt(40, 3), reachAt(126, 4), reachAt(171, 5)]))).toEqual(['today']);
  });

  it('reads the reach toward the ankle the same way', () => {
    const proximal = (newest: number) => judge([26, 126, 171].map((hours, visit) => ({ hours, photo: photo({ proximalReach: [1, 4, newest][visit] }) })));
    expect(levelsOf('spreading-proximal', proximal(4.99))).toEqual([]);
    expect(levelsOf('spreading-proximal', proximal(5))).toEqual(['today']);
  });

  it('makes no base of an area', () => {
    const areas = [24, 32, 40, 126, 171].map((hours, visit): CheckInSketch => ({ hours, photo: photo({ erythemaArea: [20, 20, 20, 60, 80][visit], reach: [1, 1, 1, 3, 4][visit] }) }));
    expect(levelsOf('spreading', judge(areas))).toEqual([]);
  });

  it('follows the limits of the book', () => {
    const changed = changeRuleBook({ 'spreading.earlyBaseMm': 5, 'spreading.earlyBaseFromHours': 30 });
    if ('problem' in changed) throw new Error(changed.problem);
    const levels = (hours: number, newest: number) => levelsOf('spreading', judge(early(hours, 1, 4, newest), {}, changed.book));
    expect([levels(30, 6), levels(30, 5.9), levels(29.9, 6)]).toEqual([['today'], [], []]);
  });
});

describe('spreading by area', () => {
  const both = (hours: number, area: number, reach: number): CheckInSketch => ({ hours, photo: photo({ erythemaArea: area, reach }) });
  const grown = (before: number, newest: number, reach = 4) => [both(48, 40, 3), both(72, 40, 3), both(96, 40, 3), both(120, before, reach), both(144, newest, reach)];

  it.each([
    [44.8, 49.9, 4, []],
    [44.8, 50, 4, ['today']],
    [44.7, 50, 4, []],
    [44.8, 50, 3.99, []],
  ])('needs a quarter more now, an eighth before, and reach up: 40, %f, %f mm² with reach %f gives %j', (before, newest, reach, levels) => {
    expect(levelsOf('spreading', judge(grown(before, newest, reach)))).toEqual(levels);
  });
});

it('hears of no area where reach cannot be read beside it', () => {
  const areas = (reaches: readonly (number | string)[]) => judge([36, 36, 48, 60].map((erythemaArea, place): CheckInSketch => ({ hours: 74 + 24 * place, photo: photo({ erythemaArea, reach: reaches[place] }) })));
  expect(levelsOf('spreading', areas([3, 3, 3.6, 4.2]))).toEqual(['today']);
  expect(levelsOf('spreading', areas(['foldHidden', 'foldHidden', 'foldHidden', 'foldHidden']))).toEqual([]);
});

describe('spreading-proximal', () => {
  it('reads the reach toward the ankle the same way', () => {
    const proximal = (hours: number, value: number) => ({ hours, photo: photo({ proximalReach: value }) });
    const course = (newest: number) => [proximal(48, 1), proximal(72, 1), proximal(96, 1), proximal(120, 2), proximal(144, newest)];
    expect(levelsOf('spreading-proximal', judge(course(2.9)))).toEqual([]);
    expect(levelsOf('spreading-proximal', judge(course(3)))).toEqual(['today']);
  });
});

describe('antibiotic-no-better', () => {
  const started = { antibioticStartedAt: '2026-03-06T09:00:00.000Z' }; // 96 h after the procedure
  const seen = (hours: number, reach: number, area: number) => ({ hours, photo: photo({ reach, erythemaArea: area, rednessLoad: area * 5 }) });

  it('is raised at the first usable photo 60 h after the start where nothing is down', () => {
    expect(levelsOf('antibiotic-no-better', judge([seen(90, 8, 80), seen(155.9, 8, 80)], started))).toEqual([]);
    expect(levelsOf('antibiotic-no-better', judge([seen(90, 8, 80), seen(156, 8, 80)], started))).toEqual(['today']);
  });

  it('is not raised where one of the three is down by its smallest detectable change', () => {
    expect(levelsOf('antibiotic-no-better', judge([seen(90, 8, 80), seen(156, 6.8, 80)], started))).toEqual([]);
    expect(levelsOf('antibiotic-no-better', judge([seen(90, 8, 80), seen(156, 8, 60)], started))).toEqual([]);
  });

  it('compares with the largest reach around the start, 48 h before to 36 h after', () => {
    expect(levelsOf('antibiotic-no-better', judge([seen(47, 12, 150), seen(60, 8, 80), seen(160, 8, 80)], started))).toEqual(['today']);
    expect(levelsOf('antibiotic-no-better', judge([seen(60, 8, 80), seen(132, 10, 110), seen(160, 8, 80)], started))).toEqual([]);
  });

  it('passes over a refused photo', () => {
    expect(levelsOf('antibiotic-no-better', judge([seen(90, 8, 80), { hours: 157, photo: refused() }, seen(180, 8, 80)], started))).toEqual(['today']);
  });
});
