/** The method page is open to everybody, and works its example on the method as it stands. */
import { describe, expect, it } from 'vitest';
import { ANONYMOUS } from '../../lib/access/actor';
import { METHOD_VERSION } from '../../lib/pipeline/method-version';
import { loadMethod } from '../../lib/server/load-method';

describe('the method page', () => {
  it('is answered to a stranger, a patient who still owes the year of birth, and to staff', async () => {
    const asking = [ANONYMOUS, { role: 'patient', episodeId: 'e', clinicId: 'c', birthYearOwed: true }, { role: 'nurse', staffId: 's', clinicId: 'c' }] as const;
    for (const actor of asking) expect(await loadMethod(actor)).toHaveProperty('method.methodVersion', METHOD_VERSION);
  });

  it('has an area with its budget worked out by the program itself, beside the true one', async () => {
    const found = await loadMethod(ANONYMOUS);
    const example = 'method' in found ? found.method.example : null;
    expect(example?.value).toMatch(/^\d+\.\d mm² ± \d+\.\d mm² \(k = 2\)$/);
    const [area = NaN, expanded = NaN] = example?.value.match(/\d+\.\d/g)?.map(Number) ?? [];
    expect(Math.abs(area - (example?.trueAreaMm2 ?? NaN))).toBeLessThan(expanded);
    expect(example?.table.rows.length).toBeGreaterThan(4);
  });
});
