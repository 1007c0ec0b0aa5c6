import { describe, expect, it } from 'vitest';
import { RULE_IDS } from '../../../lib/decide/finding';
import { changeRuleBook, DEFAULT_RULE_BOOK } from '../../../lib/decide/rule-book';
import { answerWords } from '../../../lib/report/answer-words';
import { procedureWords } from '../../../lib/report/procedure-words';
import { ruleWords } from '../../../lib/report/rule-words';

describe('the words of a rule', () => {
  it.each(RULE_IDS)('name %s and say what it rests on', (rule) => {
    const { name, limits } = ruleWords(rule, DEFAULT_RULE_BOOK, 'phenol60');
    expect(name).not.toBe(rule);
    expect(limits.length).toBeGreaterThan(0);
  });

  it('give the limit of the clinic’s own book, not the default', () => {
    const changed = changeRuleBook({ 'reachModerate.mm': 15 });
    if ('problem' in changed) throw new Error(changed.problem);
    expect(ruleWords('reach-moderate', changed.book, 'none').limits[0]).toMatch(/^15 mm \(IWGDF/);
  });

  it('say of redness that spreads each growth that is asked for, and what of it holds only sometimes', () => {
    const said = (rule: string) => ruleWords(rule, DEFAULT_RULE_BOOK, 'none').limits.map((words) => words.slice(0, words.indexOf(' (') + 10));
    expect(said('spreading')).toEqual(['2 mm (NICE NG1', '4 mm (only aga', '25 % (ours, fr', '5 mm² (ours: as', '12 mm² (only whe']);
    expect(said('spreading-proximal')).toEqual(['2 mm (NICE NG1', '4 mm (only aga']);
  });

  it('take the day that counts as late from what was put on the matrix', () => {
    expect(ruleWords('late', DEFAULT_RULE_BOOK, 'none').limits[0]).toMatch(/^21 days/);
    expect(ruleWords('late', DEFAULT_RULE_BOOK, 'phenol60').limits[0]).toMatch(/^42 days/);
  });
});

it('says of the procedure what was not recorded, and takes no silence for a no', () => {
  const words = Object.fromEntries(procedureWords({ at: '2026-03-01T09:00:00Z', matricectomy: 'none', pusSeen: false }).map(({ name, words }) => [name, words]));
  expect(words).toMatchObject({ Pus: 'none seen', Bone: 'not recorded', 'Strip removed': 'not recorded', Side: 'not recorded' });
});

it('leaves a question that was not asked empty, and writes no where no was said', () => {
  expect(answerWords({ chills: false })).toEqual({ pain: '', wetness: '', discharge: '', smell: '', temperature: '', signs: 'no: chills' });
  expect(answerWords({ pain: 0, smell: false })).toMatchObject({ pain: '0', smell: 'no', signs: '' });
});
