import { describe, expect, it } from 'vitest';
import type { Answers } from '../../../lib/care/answers';
import type { RuleId } from '../../../lib/decide/finding';
import { at, judge, levelsOf, photo } from './invented-course';

const once = (rule: RuleId, answers: Answers, hours = 100, more = {}) => levelsOf(rule, judge([{ hours, answers }], more));

describe('streak-or-fever', () => {
  it.each([{ streaks: true }, { chills: true }, { confusion: true }, { feverC: 38 }])('%j calls now, at any hour', (answers) => {
    expect(once('streak-or-fever', answers, 1)).toEqual(['now']);
    expect(once('streak-or-fever', answers, 500)).toEqual(['now']);
  });

  it('is not said where it was answered with no, or not asked', () => {
    expect(once('streak-or-fever', { streaks: false, chills: false, confusion: false, feverC: 37.9 })).toEqual([]);
    expect(once('streak-or-fever', {})).toEqual([]);
  });

  it('takes a temperature below 36 °C with another symptom', () => {
    expect(once('streak-or-fever', { feverC: 35.9 })).toEqual([]);
    expect(once('streak-or-fever', { feverC: 35.9, warmth: true })).toEqual(['now']);
    expect(once('streak-or-fever', { feverC: 36, warmth: true })).toEqual([]);
    expect(once('streak-or-fever', { feverC: 35.9, warmth: true }, 72)).toEqual([]);
    expect(once('streak-or-fever', { feverC: 35.9, cold: true }, 20)).toEqual(['now']);
  });

  it('takes a temperature below 36 °C read twice in a row, not one long before', () => {
    const low = { feverC: 35.9 };
    expect(levelsOf('streak-or-fever', judge([{ hours: 100, answers: low }, { hours: 124, answers: low }]))).toEqual(['now']);
    expect(levelsOf('streak-or-fever', judge([{ hours: 100, answers: low }, { hours: 110, answers: { feverC: 36.5 } }, { hours: 124, answers: low }]))).toEqual([]);
    expect(levelsOf('streak-or-fever', judge([{ hours: 100, answers: low }, { hours: 137, answers: low }]))).toEqual([]);
    expect(levelsOf('streak-or-fever', judge([{ hours: 100, answers: low }, { hours: 100.2, answers: low }]))).toEqual(['now']);
  });
});

describe('dusky-toe', () => {
  it.each([{ dusky: true }, { cold: true }, { boneVisible: true }, { painOutOfProportion: true }])('%j calls now', (answers) => {
    expect(once('dusky-toe', answers)).toEqual(['now']);
  });

  it.each([
    [24, []],
    [24.1, ['now']],
  ])('takes numbness later than 24 h after the anaesthetic: at %f h %j', (hours, levels) => {
    expect(once('dusky-toe', { numb: true }, hours)).toEqual(levels);
    expect(once('dusky-toe', { numb: true }, hours + 2, { procedure: { anaestheticAt: at(2) } })).toEqual(levels);
  });

  it('takes no numbness where neuropathy is on record', () => {
    expect(once('dusky-toe', { numb: true }, 100, { risks: ['neuropathy'] })).toEqual([]);
    expect(once('dusky-toe', { cold: true }, 100, { risks: ['neuropathy'] })).toEqual(['now']);
  });
});

describe('bleeding', () => {
  it('is for today, now with an anticoagulant, and not raised for another risk', () => {
    expect(once('bleeding', { bleedingAfterPressure: true })).toEqual(['today']);
    expect(once('bleeding', { bleedingAfterPressure: true }, 100, { risks: ['anticoagulant'] })).toEqual(['now']);
    expect(once('bleeding', { bleedingAfterPressure: true }, 100, { risks: ['diabetes'] })).toEqual(['today']);
    expect(once('bleeding', { bleedingAfterPressure: false })).toEqual([]);
  });

  it('calls now where blood runs or the person feels faint, and does not say that anybody pressed', () => {
    expect(once('bleeding', { bloodRuns: true })).toEqual(['now']);
    expect(once('bleeding', { bloodRuns: true, bleedingAfterPressure: true })).toEqual(['now']);
    expect(once('bleeding', { bloodRuns: false })).toEqual([]);
  });
});

describe('purulent', () => {
  const pus = { dischargeColour: 'yellow', dischargeConsistency: 'thick' } as const;

  it.each([
    [5, ['soon']],
    [5.1, ['today']],
  ])('weighs more with reach beyond 5 mm: %f mm gives %j', (reach, levels) => {
    expect(levelsOf('purulent', judge([{ hours: 20, answers: pus, photo: photo({ reach }) }]))).toEqual(levels);
  });

  it('weighs more in a foot at risk, and is not raised to now', () => {
    expect(once('purulent', pus, 100, { risks: ['pregnant'] })).toEqual(['today']);
  });

  it('rises by a further finding when redness has gone beyond 5 mm; the first one stays', () => {
    expect(levelsOf('purulent', judge([{ hours: 80, answers: pus, photo: photo({ reach: 4 }) }, { hours: 104, answers: pus, photo: photo({ reach: 6 }) }]))).toEqual(['soon', 'today']);
  });
});

describe('pain-rising', () => {
  const pains = (...all: (readonly [number, number])[]) => levelsOf('pain-rising', judge(all.map(([hours, pain]) => ({ hours, answers: { pain } }))));

  it('needs 2 above the second-lowest on two reports in a row', () => {
    expect(pains([30, 2], [54, 2], [78, 4], [102, 4])).toEqual(['soon']);
    expect(pains([30, 2], [54, 2], [78, 4], [102, 3])).toEqual([]);
    expect(pains([30, 2], [54, 2], [78, 3], [102, 4], [126, 3])).toEqual([]);
  });

  it('or 4 above it once', () => {
    expect(pains([30, 2], [54, 2], [78, 6])).toEqual(['soon']);
    expect(pains([30, 2], [54, 2], [78, 5])).toEqual([]);
  });

  it('takes the second-lowest report, so that one slip of the finger moves nothing', () => {
    expect(pains([30, 3], [54, 0], [78, 4], [102, 4])).toEqual([]);
  });

  it('takes no report from the first 24 h as its base, and judges none from the first 72 h', () => {
    expect(pains([10, 0], [20, 0], [54, 5], [78, 6], [102, 6])).toEqual([]);
    expect(pains([30, 1], [50, 1], [60, 4], [72, 4])).toEqual([]);
    expect(pains([30, 1], [50, 1], [72.1, 3], [96, 3])).toEqual(['soon']);
  });

  it('is raised by one level in a foot at risk, once', () => {
    const findings = judge([[30, 2], [54, 2], [78, 6]].map(([hours, pain]) => ({ hours, answers: { pain } })), { risks: ['under12', 'diabetes'] });
    expect(levelsOf('pain-rising', findings)).toEqual(['today']);
    expect(findings[0].raisedForRisk).toBe(true);
  });
});

describe('over-granulation', () => {
  it('needs two visits, reported or measured', () => {
    expect(levelsOf('over-granulation', judge([{ hours: 100, answers: { proudTissue: true } }]))).toEqual([]);
    expect(levelsOf('over-granulation', judge([{ hours: 100, answers: { proudTissue: true } }, { hours: 124, photo: photo({ rawBeyondMargin: 1 }) }]))).toEqual(['visit']);
    expect(levelsOf('over-granulation', judge([{ hours: 100, answers: { proudTissue: true } }, { hours: 124, photo: photo({ rawBeyondMargin: 0.99 }) }]))).toEqual([]);
  });
});

describe('spike-suspect', () => {
  const corner = (hours: number, pain = 1, proximalReach = 2) => ({ hours, answers: { cornerTender: true, pain }, photo: photo({ proximalReach }) });

  it('is raised at once where a spike or torn edge is on record, soon when it hurts after day 3', () => {
    expect(levelsOf('spike-suspect', judge([], { procedure: { edge: 'spike' } }))).toEqual(['visit']);
    expect(levelsOf('spike-suspect', judge([{ hours: 80, answers: { pain: 3 } }], { procedure: { edge: 'torn' } }))).toEqual(['visit']);
    expect(levelsOf('spike-suspect', judge([{ hours: 80, answers: { pain: 4 } }], { procedure: { edge: 'torn' } }))).toEqual(['visit', 'soon']);
  });

  it('needs a tender and red corner on two visits after day 10', () => {
    expect(levelsOf('spike-suspect', judge([corner(241), corner(265)]))).toEqual(['visit']);
    expect(levelsOf('spike-suspect', judge([corner(240), corner(264)]))).toEqual([]);
    expect(levelsOf('spike-suspect', judge([corner(241), corner(265, 1, 0.8)]))).toEqual([]);
    expect(levelsOf('spike-suspect', judge([corner(241), corner(265, 5)]))).toEqual(['soon']);
  });
});

describe('bone-felt', () => {
  const sore = (hours: number, pain: number) => ({ hours, answers: { pain }, photo: photo({ erythemaArea: 30 }) });

  it('is for today where bone was felt, from the procedure on', () => {
    const [finding] = judge([], { procedure: { boneFelt: true } });
    expect([finding.rule, finding.level, finding.at]).toEqual(['bone-felt', 'today', at(0)]);
  });

  it('needs redness and pain on two visits after day 14', () => {
    expect(levelsOf('bone-felt', judge([sore(337, 4), sore(361, 4)]))).toEqual(['today']);
    expect(levelsOf('bone-felt', judge([sore(336, 4), sore(360, 4)]))).toEqual([]);
    expect(levelsOf('bone-felt', judge([sore(337, 4), sore(361, 3)]))).toEqual([]);
  });

  it('hears redness by its reach where there is no area, and none where there is neither', () => {
    const seenBy = (erythemaArea: number | string, reach: number | string) => [337, 361].map((hours) => ({ ...sore(hours, 4), photo: photo({ erythemaArea, reach }) }));
    expect(levelsOf('bone-felt', judge(seenBy('foldHidden', 3)))).toEqual(['today']);
    expect(levelsOf('bone-felt', judge(seenBy('noRegionFound', 'noRegionFound')))).toEqual([]);
  });
});
