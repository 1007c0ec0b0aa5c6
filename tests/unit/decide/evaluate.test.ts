import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../../lib/decide/constants';
import { changeRuleBook, LIMIT_IDS } from '../../../lib/decide/rule-book';
import { ALL_RULES } from '../../../lib/decide/all-rules';
import { RULE_IDS } from '../../../lib/decide/finding';
import { at, judge, levelsOf, photo } from './invented-course';

const PUS = { dischargeColour: 'green', dischargeConsistency: 'thick' } as const;

describe('a finding', () => {
  it('stays when later answers no longer say it', () => {
    const [finding] = judge([{ hours: 50, answers: { streaks: true } }, { hours: 74, answers: { streaks: false } }, { hours: 98, answers: { streaks: false } }]);
    expect([finding.rule, finding.at, finding.closed]).toEqual(['streak-or-fever', at(50), null]);
  });

  it('is closed by a person, with name, time and reason, and stays in the list', () => {
    const [finding] = judge([{ hours: 50, answers: PUS }], { nowHours: 60, resolutions: [{ rule: 'purulent', at: at(55), by: 'nurse', reason: 'swab taken' }] });
    expect(finding.closed).toEqual({ at: at(55), by: 'nurse', reason: 'swab taken' });
  });

  it('is raised again by newer evidence only', () => {
    const resolutions = [{ rule: 'purulent', at: at(55), by: 'nurse', reason: 'seen' }];
    expect(levelsOf('purulent', judge([{ hours: 50, answers: PUS }], { nowHours: 100, resolutions }))).toEqual(['soon']);
    expect(levelsOf('purulent', judge([{ hours: 50, answers: PUS }, { hours: 74, answers: PUS }], { resolutions }))).toEqual(['soon', 'soon']);
  });

  it('is not closed by a resolution that lies before it', () => {
    const [finding] = judge([{ hours: 50, answers: PUS }], { nowHours: 60, resolutions: [{ rule: 'purulent', at: at(40), by: 'nurse', reason: 'early' }] });
    expect(finding.closed).toBeNull();
  });

  it('is closed with the case; after that only symptoms are heard', () => {
    const findings = judge([{ hours: 50, answers: PUS }, { hours: 90, answers: { chills: true }, photo: photo({ reach: 25 }) }], { closedAt: at(60) });
    expect(findings.map(({ rule, closed }) => [rule, closed?.reason ?? null])).toEqual([
      ['purulent', 'The case was closed.'],
      ['streak-or-fever', null],
    ]);
  });

  it('is known from when the photo arrived, not from when it was taken', () => {
    const [finding] = judge([{ hours: 50, photo: photo({ reach: 25 }, { receivedAt: at(58) }) }], { nowHours: 70 });
    expect(finding.at).toBe(at(58));
  });

  it('carries its evidence and the rule book’s version', () => {
    const [finding] = judge([{ hours: 50, photo: photo({ reach: 25 }, { id: 'photo-7' }) }]);
    expect(finding.evidence.photos).toEqual(['photo-7']);
    expect(finding.evidence.numbers[0]).toMatchObject({ name: 'reach', value: 25, unit: 'mm' });
    expect(finding.ruleBookVersion).toBe('2026.3');
  });
});

describe('levels', () => {
  it('reach now by symptom rules only, whatever the risks', () => {
    const everything = judge(
      [
        { hours: 100, answers: PUS, photo: photo({ reach: 25, proximalReach: 20, creaseDistance: 15 }) },
        { hours: 124, answers: { ...PUS, pain: 9, proudTissue: true } },
      ],
      { risks: ['diabetes', 'arterial'], procedure: { boneFelt: true, edge: 'spike' }, nowHours: 90 * 24 },
    );
    expect(everything.length).toBeGreaterThan(5);
    expect(everything.filter(({ level }) => level === 'now')).toEqual([]);
  });
});

describe('a visit', () => {
  it('takes in what lies less than 6 h after its first check-in', () => {
    const proud = (hours: number) => ({ hours, answers: { proudTissue: true } });
    expect(levelsOf('over-granulation', judge([proud(100), proud(105.9)]))).toEqual([]);
    expect(levelsOf('over-granulation', judge([proud(100), proud(106)]))).toEqual(['visit']);
  });
});

describe('the rule book', () => {
  it('has every rule once, and every limit inside its own range, with a source', () => {
    expect(ALL_RULES.map(({ id }) => id).sort()).toEqual([...RULE_IDS].sort());
    for (const id of LIMIT_IDS) {
      const { value, least, most, source } = LIMITS[id];
      expect(value >= least && value <= most, id).toBe(true);
      expect(source.length, id).toBeGreaterThan(3);
    }
  });

  it('lets a clinic change a limit inside its range, and says so in its version', () => {
    const changed = changeRuleBook({ 'fever.celsius': 37.8 });
    if ('problem' in changed) throw new Error(changed.problem);
    expect(changed.book.version).toBe('2026.3 with fever.celsius=37.8');
    expect(levelsOf('streak-or-fever', judge([{ hours: 50, answers: { feverC: 37.8 } }], {}, changed.book))).toEqual(['now']);
  });

  it.each([
    [{ 'fever.celsius': 39 }, /fever\.celsius may lie between 37\.5 and 38\.5/],
    [{ 'fever.fahrenheit': 100 }, /no limit “fever\.fahrenheit”/],
    [{ toString: 1 }, /no limit “toString”/],
    [{ 'fever.celsius': NaN }, /received NaN/],
  ])('refuses %j', (changes, message) => {
    expect(changeRuleBook(changes as Record<string, number>)).toEqual({ problem: expect.stringMatching(message) });
  });
});
