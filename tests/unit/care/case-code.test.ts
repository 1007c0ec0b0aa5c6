import { describe, expect, it } from 'vitest';
import { casePrefix, nextCaseCode } from '../../../lib/care/case-code';
import { FIRST_PLAN_TEMPLATES, planTemplateSchema } from '../../../lib/care/plan-templates';

describe('a case code', () => {
  it.each([
    ['Heron Lane Foot Clinic', 'HL-'],
    ['Élan', 'E-'],
    ['123', ''],
  ])('takes its letters from the name of the clinic: %s', (name, prefix) => {
    expect(casePrefix(name)).toBe(prefix);
  });

  it('is higher than every code there is, and begins at 101', () => {
    expect(nextCaseCode('Heron Lane', [])).toBe('HL-101');
    expect(nextCaseCode('Heron Lane', ['HL-99', 'HL-250', 'HL-x7', 'AB-900'])).toBe('HL-251');
  });
});

it('offers first regimens that its own rule for regimens takes', () => {
  for (const template of FIRST_PLAN_TEMPLATES) expect(planTemplateSchema.parse(template)).toEqual(template);
});
