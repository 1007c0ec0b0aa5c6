/** The aftercare sheet: what it says in each language, that it fits its page, and that its code can be read. */
import jsQR from 'jsqr';
import { beforeAll, describe, expect, it } from 'vitest';
import { FIRST_PLAN_TEMPLATES } from '../../../lib/care/plan-templates';
import { addressModules } from '../../../lib/edges/paper/qr-modules';
import { printedWidths } from '../../../lib/edges/paper/sheet-pdf';
import type { AftercareFacts } from '../../../lib/report/aftercare-facts';
import { aftercareSheet } from '../../../lib/report/aftercare-sheet';
import { AFTERCARE_EN } from '../../../lib/report/aftercare-words-en';
import { AFTERCARE_ES } from '../../../lib/report/aftercare-words-es';
import type { WidthOf } from '../../../lib/report/wrap-words';

const address = `https://clinic.example/p/${'aB3_-'.repeat(9).slice(0, 43)}`;
const facts = (more: Partial<AftercareFacts> = {}): AftercareFacts => ({
  language: 'en',
  caseCode: 'HL-113',
  foot: 'left',
  procedureAt: '2026-11-25T10:00:00Z',
  timeZone: 'Europe/Madrid',
  plan: FIRST_PLAN_TEMPLATES[0].plan,
  clinic: { name: 'Heron Lane Foot Clinic', phone: '01632 960134', emergencyPhone: '112', openingHours: 'Monday to Friday, 8:30 to 17:00' },
  feverC: 37.8,
  numbHours: 24,
  address,
  code: addressModules(address),
  ...more,
});

let widthOf: WidthOf;
beforeAll(async () => {
  widthOf = await printedWidths();
});
const wordsOn = (more: Partial<AftercareFacts> = {}) => aftercareSheet('a4', facts(more), widthOf).texts.map(({ text }) => text).join(' ');

describe('the aftercare sheet', () => {
  it('says until when the dressing stays, in the patient’s own zone', () => {
    expect(wordsOn()).toContain('24 hours: until Thursday 26 November at 11:00.');
    expect(wordsOn({ language: 'es' })).toContain('hasta el jueves 26 de noviembre a las 11:00.');
  });

  it('names whom to call, what to do when it bleeds, the clinic’s own limit for fever, and no person', () => {
    const words = wordsOn();
    for (const part of ['01632 960134', '112', 'Keep pressing for 20 minutes', '37.8 °C', 'Left big toe', 'HL-113', 'does not say what is wrong']) expect(words).toContain(part);
  });

  it('follows the plan: no soaks where none are planned', () => {
    const words = wordsOn({ plan: FIRST_PLAN_TEMPLATES[2].plan });
    expect(words).toContain('No soaks.');
    expect(words).not.toContain('soak your toe');
    expect(words).not.toContain('Between soaks');
  });

  it('lists as many signs in each language', () => {
    expect(AFTERCARE_ES.call.signs('38', 24)).toHaveLength(AFTERCARE_EN.call.signs('38', 24).length);
  });

  it.each(['a4', 'letter'] as const)('keeps every line on %s and above the cautions, in both languages, with the longest notes', (paper) => {
    for (const language of ['en', 'es'] as const) {
      const plan = { ...FIRST_PLAN_TEMPLATES[0].plan, notes: 'Ten words that say a little more than is needed. '.repeat(8).trim() };
      const { texts, widthMm, heightMm } = aftercareSheet(paper, facts({ language, plan }), widthOf);
      for (const line of texts) {
        expect(line.acrossMm + widthOf(line.text, line.sizePt, line.weight)).toBeLessThan(widthMm - 10);
        expect(line.downMm).toBeLessThan(heightMm - 10);
      }
      const at = texts.map(({ acrossMm, downMm }) => `${acrossMm.toFixed(1)} ${downMm.toFixed(1)}`);
      expect(new Set(at).size).toBe(at.length);
    }
  });

  it('refuses a plan that fits no page', () => {
    expect(() => wordsOn({ plan: { ...FIRST_PLAN_TEMPLATES[0].plan, notes: 'word '.repeat(2000) } })).toThrow(RangeError);
  });

  it('carries a code that another program reads as the link', () => {
    const code = addressModules(address);
    const [scale, quiet] = [6, 4];
    const side = (code.length + 2 * quiet) * scale;
    const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
    for (let row = 0; row < side; row += 1)
      for (let column = 0; column < side; column += 1)
        if (code[Math.floor(row / scale) - quiet]?.[Math.floor(column / scale) - quiet]) pixels.fill(0, (row * side + column) * 4, (row * side + column) * 4 + 3);
    expect(jsQR(pixels, side, side)?.data).toBe(address);
  });
});
