/** Days and check-ins through clock changes: one a day, none skipped, none doubled. */
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { dueNow } from '../../../lib/care/due-now';
import { scheduleDay, scheduleDaysSince } from '../../../lib/care/schedule-day';

const ZONES = ['America/New_York', 'Europe/Berlin', 'Africa/Cairo', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'Pacific/Apia'] as const;
const zone = fc.constantFrom(...ZONES);
const instant = fc.integer({ min: Date.UTC(2026, 0, 1), max: Date.UTC(2027, 0, 1) });
const iso = (ms: number): string => new Date(ms).toISOString();
const HOUR_MS = 3_600_000;

describe('the schedule day', () => {
  it('never runs back, and grows by at most one in an hour', () => {
    fc.assert(
      fc.property(instant, zone, (ms, timeZone) => {
        expect([0, 1]).toContain(scheduleDaysSince(iso(ms), iso(ms + HOUR_MS), timeZone));
      }),
    );
  });

  it('is the local date from 04:00 on', () => {
    fc.assert(
      fc.property(instant, zone, (ms, timeZone) => {
        const local = DateTime.fromMillis(ms, { zone: timeZone });
        const expected = local.hour >= 4 ? local.toISODate() : local.minus({ days: 1 }).toISODate();
        expect(scheduleDay(iso(ms), timeZone)).toBe(expected);
      }),
    );
  });

  it('does not depend on how the instant is written', () => {
    fc.assert(
      fc.property(instant, zone, zone, (ms, timeZone, writtenIn) => {
        expect(scheduleDay(DateTime.fromMillis(ms, { zone: writtenIn }).toISO() ?? '', timeZone)).toBe(scheduleDay(iso(ms), timeZone));
      }),
    );
  });
});

describe('a ticker that asks every hour what is due', () => {
  it.each([
    ['America/New_York', '2026-02-20T15:00:00Z'],
    ['America/New_York', '2026-10-15T15:00:00Z'],
    ['Europe/Berlin', '2026-03-15T09:00:00Z'],
    ['Europe/Berlin', '2026-10-12T09:00:00Z'],
    ['Africa/Cairo', '2026-04-12T09:00:00Z'],
    ['Australia/Lord_Howe', '2026-03-25T01:00:00Z'],
  ])('asks once a day for thirty days in %s from %s', (timeZone, procedureAt) => {
    const checkInsAt: string[] = [];
    const start = Date.parse(procedureAt);
    for (let hour = 1; hour <= 30 * 24; hour++) {
      const now = iso(start + hour * HOUR_MS);
      const { state } = dueNow({ procedureAt, plan: { checkInEveryHours: 24, graceHours: 36 }, checkInsAt, now, timeZone, ended: false }).checkIn;
      expect(['notYet', 'due']).toContain(state);
      if (state === 'due') checkInsAt.push(now);
    }
    const days = checkInsAt.map((at) => scheduleDaysSince(procedureAt, at, timeZone));
    expect(days).toEqual(days.map((_, place) => place + 1));
    expect(days.length).toBeGreaterThanOrEqual(29);
  });
});
