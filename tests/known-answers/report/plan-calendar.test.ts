/** The calendar file against RFC 5545 (Internet Calendaring and Scheduling Core Object Specification, 2009); sections are named. */
import { describe, expect, it } from 'vitest';
import { planCalendar } from '../../../lib/report/plan-calendar';
import { CALENDAR_WORDS } from '../../../lib/report/plan-calendar-words';

const FACTS = {
  clinic: { name: 'Heron Lane, foot clinic; room 2', phone: '01632 960123', emergencyPhone: '999', openingHours: 'Mon–Fri' },
  // Clocks go forward in this zone on 29 March 2026.
  timeZone: 'Europe/Berlin',
  procedureAt: '2026-03-25T10:30:00+01:00',
  now: '2026-03-25T12:00:00+01:00',
  plan: { dressingStaysHours: 24, soaksPerDay: 2, soakMinutes: 10, coverBetweenSoaks: true, checkInEveryHours: 24, graceHours: 36, notes: '' },
};
const file = (facts: Partial<typeof FACTS> = {}, language: 'en' | 'es' = 'en') => planCalendar({ ...FACTS, ...facts }, CALENDAR_WORDS[language], (name) => `${name}@clinic.example`) ?? '';

/** Section 3.1: a line may be folded; the fold is a line break and one space or tab. */
const unfolded = (text: string) => text.replace(/\r\n[ \t]/g, '').split('\r\n').filter((line) => line !== '');
const valuesOf = (text: string, name: string) => unfolded(text).filter((line) => line.startsWith(name)).map((line) => line.slice(line.indexOf(':') + 1));

describe('the days of a plan as a calendar file', () => {
  it('breaks every line by CRLF and keeps each to 75 octets (3.1)', () => {
    const text = file({}, 'es');
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  });

  it('is one calendar of version 2.0 with a product, and a name and a stamp in UTC for every entry (3.4, 3.6, 3.7.3, 3.8.4.7)', () => {
    const lines = unfolded(file());
    expect(lines[0]).toBe('BEGIN:VCALENDAR');
    expect(lines.at(-1)).toBe('END:VCALENDAR');
    expect(valuesOf(file(), 'VERSION')).toEqual(['2.0']);
    expect(valuesOf(file(), 'PRODID')).toHaveLength(1);
    const uids = valuesOf(file(), 'UID');
    expect(new Set(uids).size).toBe(lines.filter((line) => line === 'BEGIN:VEVENT').length);
    for (const stamp of valuesOf(file(), 'DTSTAMP')) expect(stamp).toMatch(/^\d{8}T\d{6}Z$/);
  });

  it('gives floating local times: the dressing a day later, check-ins at 18:00 on both sides of the clock change (3.3.5)', () => {
    const starts = valuesOf(file(), 'DTSTART');
    expect(starts[0]).toBe('20260326T103000');
    expect(starts.slice(1)).toEqual(Array.from({ length: 14 }, (_, i) => `${i + 26 <= 31 ? `202603${i + 26}` : `2026040${i - 5}`}T180000`));
  });

  it('escapes comma and semicolon in text (3.3.11)', () => {
    expect(valuesOf(file(), 'DESCRIPTION')[0]).toContain('Heron Lane\\, foot clinic\\; room 2');
  });

  it('keeps what is still to come, under the same names when it is made again', () => {
    const later = file({ now: '2026-04-06T12:00:00+02:00' });
    expect(valuesOf(later, 'DTSTART')).toEqual(['20260406T180000', '20260407T180000', '20260408T180000']);
    expect(valuesOf(file(), 'UID')).toEqual(expect.arrayContaining(valuesOf(later, 'UID')));
    expect(planCalendar({ ...FACTS, now: '2026-05-01T12:00:00+02:00' }, CALENDAR_WORDS.en, (name) => name)).toBeNull();
  });

  it('says whom to call, and no word of an illness that others could read on the phone', () => {
    // Each entry and its alarm have a description; the entry's is the longer one.
    const entries = file().split('BEGIN:VALARM').map((part) => valuesOf(part, 'DESCRIPTION').at(-1) ?? '').slice(0, -1);
    expect(entries).toHaveLength(15);
    expect(entries.every((one) => one.includes('01632 960123'))).toBe(true);
    expect(file()).not.toMatch(/infect|wound|redness|blood/i);
  });
});
