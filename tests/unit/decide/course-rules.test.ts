import { describe, expect, it } from 'vitest';
import type { Matricectomy } from '../../../lib/care/procedure';
import { at, type CheckInSketch, judge, levelsOf, photo, refused } from './invented-course';

const raw = (hours: number, area: number | string): CheckInSketch => ({ hours, photo: photo({ rawArea: area }) });

describe('stalled', () => {
  const course = (last: number, hours: readonly number[] = [70, 100, 130, 160]) => hours.map((one, place) => raw(one, place < 2 ? 20 : last));

  it.each([
    [17.7, ['soon']],
    [17.6, []],
    [17.5, []],
  ])('needs the last two not an eighth below the first two: 20 to %f mm² gives %j', (last, levels) => {
    expect(levelsOf('stalled', judge(course(last)))).toEqual(levels);
  });

  it('needs four photos over 90 h', () => {
    expect(levelsOf('stalled', judge([70, 130, 160].map((hours) => raw(hours, 20))))).toEqual([]);
    expect(levelsOf('stalled', judge(course(20, [71, 100, 130, 160])))).toEqual([]);
  });

  it.each([
    ['none', 156],
    ['naoh', 156],
    ['phenol30', 204],
    ['phenol60', 288],
  ] as const)('begins at half the expected time and a day: after %s at %i h', (matricectomy, from) => {
    const until = (last: number) => levelsOf('stalled', judge([last - 90, last - 60, last - 30, last].map((hours) => raw(hours, 20)), { procedure: { matricectomy } }));
    expect(until(from)).toEqual(['soon']);
    expect(until(from - 0.1)).toEqual([]);
  });

  it('needs more than half of the peak', () => {
    const after = (peak: number) => levelsOf('stalled', judge([raw(20, peak), ...course(20)]));
    expect(after(39.9)).toEqual(['soon']);
    expect(after(40)).toEqual([]);
  });

  it('shows the exact tail of Mann–Kendall as evidence', () => {
    const [finding] = judge(course(20)).filter(({ rule }) => rule === 'stalled');
    expect(finding.evidence.numbers.map(({ name }) => name)).toContain('exactFallingTail');
  });
});

describe('late', () => {
  const levels = (matricectomy: Matricectomy, days: number) => levelsOf('late', judge([], { procedure: { matricectomy }, nowHours: days * 24 }));

  it.each([
    ['none', 21, 28],
    ['naoh', 21, 42],
    ['phenol30', 28, 56],
    ['phenol60', 42, 84],
    ['unknown', 42, 84],
  ] as const)('after %s on day %i and again on day %i', (matricectomy, slow, late) => {
    expect(levels(matricectomy, slow - 0.01)).toEqual([]);
    expect(levels(matricectomy, slow)).toEqual(['visit']);
    expect(levels(matricectomy, late - 0.01)).toEqual(['visit']);
    expect(levels(matricectomy, late)).toEqual(['visit', 'soon']);
  });

  it('is not raised where it was found dry', () => {
    const dry = [240, 264].map((hours) => ({ hours, answers: { wetness: 'dry' as const }, photo: photo({ rawArea: 'noRegionFound' }) }));
    expect(levelsOf('late', judge(dry, { nowHours: 30 * 24 }))).toEqual([]);
  });
});

const DRY = { wetness: 'dry', dischargeColour: 'none', dischargeConsistency: 'none' } as const;
const WET = { wetness: 'wet', dischargeColour: 'clear', dischargeConsistency: 'watery' } as const;
const dryAt = (hours: number, area: number | readonly [number, number] | string = 'noRegionFound'): CheckInSketch => ({ hours, answers: DRY, photo: photo({ rawArea: area }) });

describe('dry', () => {
  it.each([
    [11.9, []],
    [12, ['visit']],
  ])('needs two clean check-ins 12 h apart: %f h gives %j', (gap, levels) => {
    expect(levelsOf('dry', judge([dryAt(200), dryAt(200 + gap)]))).toEqual(levels);
  });

  it('needs a last usable photo without raw area: its value less twice u is not above zero', () => {
    expect(levelsOf('dry', judge([dryAt(200), dryAt(224, [1, 0.5])]))).toEqual(['visit']);
    expect(levelsOf('dry', judge([dryAt(200), dryAt(224, [1.01, 0.5])]))).toEqual([]);
    expect(levelsOf('dry', judge([dryAt(200, 'foldHidden'), dryAt(224, 'foldHidden')]))).toEqual([]);
    expect(levelsOf('dry', judge([{ hours: 200, answers: DRY }, { hours: 224, answers: DRY }]))).toEqual([]);
  });

  it('is broken by a check-in that is not dry', () => {
    expect(levelsOf('dry', judge([dryAt(200), { hours: 212, answers: { wetness: 'damp' } }, dryAt(224)]))).toEqual([]);
  });

  it('is never raised for risk', () => {
    expect(levelsOf('dry', judge([dryAt(200), dryAt(224)], { risks: ['diabetes'] }))).toEqual(['visit']);
  });
});

describe('relapse', () => {
  const was = [dryAt(200), dryAt(224)];

  it('is two check-ins not dry, or one wet with discharge', () => {
    expect(levelsOf('relapse', judge([...was, { hours: 248, answers: { wetness: 'damp' } }]))).toEqual([]);
    expect(levelsOf('relapse', judge([...was, { hours: 248, answers: { wetness: 'damp' } }, { hours: 272, answers: { wetness: 'damp' } }]))).toEqual(['soon']);
    expect(levelsOf('relapse', judge([...was, { hours: 248, answers: WET }]))).toEqual(['soon']);
    expect(levelsOf('relapse', judge([{ hours: 248, answers: WET }]))).toEqual([]);
  });

  it('closes "dry" with its reason, and dry can come again', () => {
    const findings = judge([...was, { hours: 248, answers: WET }, dryAt(272), dryAt(296)]);
    expect(findings.filter(({ rule }) => rule === 'dry').map(({ closed }) => closed?.by ?? null)).toEqual(['relapse', null]);
  });

  it('is redness up by a quarter and 5 mm² on two visits', () => {
    const red = (hours: number, area: number): CheckInSketch => ({ hours, answers: DRY, photo: photo({ rawArea: 'noRegionFound', erythemaArea: area }) });
    const course = (one: number, two: number) => levelsOf('relapse', judge([red(200, 20), red(224, 20), red(248, one), red(272, two)]));
    expect(course(25, 25)).toEqual(['soon']);
    expect(course(24.9, 25)).toEqual([]);
    expect(course(25, 24.9)).toEqual([]);
  });
});

describe('macerated', () => {
  const soggy = (hours: number, area: number | string): CheckInSketch => ({ hours, photo: photo({ maceratedArea: area, foldStripArea: 40 }) });

  it('needs more than a quarter of the strip on two visits, both areas measured', () => {
    expect(levelsOf('macerated', judge([soggy(100, 10.1), soggy(124, 10.1)]))).toEqual(['soon']);
    expect(levelsOf('macerated', judge([soggy(100, 10.1), soggy(124, 10)]))).toEqual([]);
    expect(levelsOf('macerated', judge([soggy(100, 20)]))).toEqual([]);
    expect(levelsOf('macerated', judge([100, 124].map((hours) => ({ hours, photo: photo({ maceratedArea: 20 }) }))))).toEqual([]);
  });
});

describe('silent', () => {
  it('is raised when interval and grace have passed, to the minute', () => {
    expect(levelsOf('silent', judge([{ hours: 30 }], { nowHours: 89.9 }))).toEqual([]);
    const [finding] = judge([{ hours: 30 }], { nowHours: 200 }).filter(({ rule }) => rule === 'silent');
    expect([finding.level, finding.at]).toEqual(['soon', at(90)]);
  });

  it('is for today where another finding is open', () => {
    expect(levelsOf('silent', judge([{ hours: 30, answers: { dischargeColour: 'green', dischargeConsistency: 'thick' } }], { nowHours: 200 }))).toEqual(['today']);
  });

  it('follows the plan', () => {
    const plan = { checkInEveryHours: 48, graceHours: 12 };
    expect(levelsOf('silent', judge([{ hours: 30 }], { plan, nowHours: 89.9 }))).toEqual([]);
    expect(levelsOf('silent', judge([{ hours: 30 }], { plan, nowHours: 90 }))).toEqual(['soon']);
  });

  it('is closed, with its reason, by the next check-in', () => {
    const findings = judge([{ hours: 30 }, { hours: 100 }]);
    expect(findings.map(({ rule, closed }) => [rule, closed?.reason])).toContainEqual(['silent', 'A check-in came.']);
  });

  it('ends when dryness is confirmed, and not when it is dismissed', () => {
    const resolution = { rule: 'dry', at: at(230), by: 'nurse', reason: 'seen' };
    const course = [50, 100, 150].map((hours): CheckInSketch => ({ hours, photo: photo({ reach: 2 }) })).concat([dryAt(200), dryAt(224)]);
    const silent = (resolutions: (typeof resolution & { outcome?: 'dismissed' })[]) => levelsOf('silent', judge(course, { nowHours: 400, resolutions }));
    expect(silent([])).toEqual(['soon']);
    expect(silent([resolution])).toEqual([]);
    expect(silent([{ ...resolution, outcome: 'dismissed' }])).toEqual(['soon']);
  });

  it('ends when the case is closed', () => {
    expect(levelsOf('silent', judge([{ hours: 30 }], { nowHours: 400, closedAt: at(60) }))).toEqual([]);
  });
});

describe('cannot-judge', () => {
  const blurred = (hours: number): CheckInSketch => ({ hours, photo: refused() });

  it('needs two visits in a row without a usable photo, and waits until the second has closed', () => {
    expect(levelsOf('cannot-judge', judge([blurred(100), blurred(124)], { nowHours: 129.9 }))).toEqual([]);
    expect(levelsOf('cannot-judge', judge([blurred(100), blurred(124)], { nowHours: 130 }))).toEqual(['soon']);
    expect(levelsOf('cannot-judge', judge([blurred(100), { hours: 124, photo: photo({ reach: 3 }) }, blurred(148)], { nowHours: 160 }))).toEqual([]);
  });

  it('is not raised when a second photo of the same visit can be used', () => {
    expect(levelsOf('cannot-judge', judge([blurred(100), blurred(124), { hours: 129.9, photo: photo({ reach: 3 }) }], { nowHours: 140 }))).toEqual([]);
    expect(levelsOf('cannot-judge', judge([blurred(100), blurred(124), { hours: 130, photo: photo({ reach: 3 }) }], { nowHours: 140 }))).toEqual(['soon']);
  });

  it('is raised where redness cannot be seen on two visits, and not where none was found', () => {
    const unseen = (reason: string) => [100, 124].map((hours) => ({ hours, photo: photo({ reach: reason, erythemaArea: reason }) }));
    expect(levelsOf('cannot-judge', judge(unseen('contrastTooLow'), { nowHours: 140 }))).toEqual(['soon']);
    expect(levelsOf('cannot-judge', judge(unseen('noRegionFound'), { nowHours: 140 }))).toEqual([]);
  });

  it('asks for no photo while the first dressing is on', () => {
    expect(levelsOf('cannot-judge', judge([{ hours: 5 }, { hours: 20 }], { nowHours: 40 }))).toEqual([]);
  });
});
