/**
 * What people of the trade do, as far as it is a number here. Common practice, no publication: each is a default that a
 * clinic changes, and the phantoms draw the same.
 */
import { describe, expect, it } from 'vitest';
import { DEFAULT_DRESSING_STAYS_HOURS, DEFAULT_SOAK_DAYS } from '../../../lib/care/constants';
import { FIRST_PLAN_TEMPLATES } from '../../../lib/care/plan-templates';
import { randomWound } from '../../phantom/random-wound';
import { randomSource } from '../../phantom/random/random-source';

describe('common practice', () => {
  it('leaves the first dressing on for 24 h', () => {
    expect(DEFAULT_DRESSING_STAYS_HOURS).toBe(24);
    expect(FIRST_PLAN_TEMPLATES[0].plan.dressingStaysHours).toBe(24);
  });

  it('soaks for about two weeks', () => {
    expect(DEFAULT_SOAK_DAYS).toBe(14);
    for (const { name, plan } of FIRST_PLAN_TEMPLATES.filter(({ plan: { soaksPerDay } }) => soaksPerDay > 0)) expect(plan.soakDays, name).toBe(14);
  });

  it('takes 2–3 mm off the nail plate, in every phantom within the tenth of a millimetre that a blade takes', () => {
    const strips = Array.from({ length: 500 }, (_, seed) => randomWound(randomSource(seed, 'wound')).stripMm);
    expect(Math.min(...strips)).toBeGreaterThanOrEqual(2);
    expect(Math.max(...strips)).toBeLessThanOrEqual(3.1);
  });
});
