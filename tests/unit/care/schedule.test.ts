import { describe, expect, it } from 'vitest';
import { askEveryTime } from '../../../lib/care/ask-every-time';
import { dueNow, type ScheduleQuestion } from '../../../lib/care/due-now';
import { scheduleDay, scheduleDaysSince } from '../../../lib/care/schedule-day';

describe('the day something belongs to', () => {
  it.each([
    ['2026-03-10T03:59:00+01:00', '2026-03-09'],
    ['2026-03-10T04:00:00+01:00', '2026-03-10'],
    ['2026-03-10T23:59:00+01:00', '2026-03-10'],
  ])('changes at four in the morning where the patient lives: %s is %s', (instant, day) => {
    expect(scheduleDay(instant, 'Europe/Berlin')).toBe(day);
  });

  it.each([
    ['Europe/Berlin', '2026-03-28T12:00:00+01:00', '2026-03-29T03:30:00+02:00', 0],
    ['Europe/Berlin', '2026-03-28T12:00:00+01:00', '2026-03-29T04:00:00+02:00', 1],
    ['America/New_York', '2026-10-31T12:00:00-04:00', '2026-11-01T03:59:00-05:00', 0],
    ['America/New_York', '2026-10-31T12:00:00-04:00', '2026-11-01T04:00:00-05:00', 1],
    ['Australia/Lord_Howe', '2026-04-04T12:00:00+11:00', '2026-04-05T04:00:00+10:30', 1],
    ['Africa/Cairo', '2026-04-23T12:00:00+02:00', '2026-04-25T12:00:00+03:00', 2],
  ])('counts calendar days over a clock change in %s', (zone, from, to, days) => {
    expect(scheduleDaysSince(from, to, zone)).toBe(days);
  });

  it('refuses an unknown zone by name', () => {
    expect(() => scheduleDay('2026-03-10T12:00:00Z', 'Europe/Nowhere')).toThrow(/Europe\/Nowhere/);
  });
});

describe('what is due now', () => {
  const question = (now: string, checkInsAt: string[], more: Partial<ScheduleQuestion['plan']> = {}, ended = false): ScheduleQuestion => ({
    procedureAt: '2026-03-27T10:00:00+01:00',
    plan: { checkInEveryHours: 24, graceHours: 36, soaksPerDay: 2, soakMinutes: 10, ...more },
    checkInsAt,
    now,
    timeZone: 'Europe/Berlin',
    ended,
  });
  const stateAt = (now: string, checkInsAt: string[] = []) => dueNow(question(now, checkInsAt)).checkIn.state;

  it('leaves the first dressing on for 24 h and asks for no soak before', () => {
    const before = dueNow(question('2026-03-28T09:59:00+01:00', []));
    expect([before.dressing.staysOn, before.soaks]).toEqual([true, null]);
    const after = dueNow(question('2026-03-28T10:00:00+01:00', []));
    expect([after.dressing.staysOn, after.soaks]).toEqual([false, { perDay: 2, minutes: 10 }]);
  });

  it('ends soaks with the plan', () => {
    expect(dueNow(question('2026-04-10T12:00:00+02:00', [])).soaks).not.toBeNull();
    expect(dueNow(question('2026-04-11T12:00:00+02:00', [])).soaks).toBeNull();
    expect(dueNow(question('2026-03-29T12:00:00+02:00', [], { soaksPerDay: 0 })).soaks).toBeNull();
  });

  it('asks once a calendar day, also on the day of 23 hours', () => {
    const sent = ['2026-03-28T20:00:00+01:00'];
    expect(stateAt('2026-03-28T23:00:00+01:00', sent)).toBe('notYet');
    expect(stateAt('2026-03-29T03:59:00+02:00', sent)).toBe('notYet');
    expect(stateAt('2026-03-29T04:00:00+02:00', sent)).toBe('due');
    expect(stateAt('2026-03-30T04:00:00+02:00', sent)).toBe('late');
  });

  it('is silent once interval and grace have passed, by hours', () => {
    const sent = ['2026-03-28T20:00:00+01:00'];
    expect(dueNow(question('2026-03-29T12:00:00+02:00', sent)).checkIn.silentFrom).toBe('2026-03-31T07:00:00.000Z');
    expect(stateAt('2026-03-31T08:59:00+02:00', sent)).toBe('late');
    expect(stateAt('2026-03-31T09:00:00+02:00', sent)).toBe('silent');
  });

  it('asks for nothing more when it has ended', () => {
    const ended = dueNow(question('2026-04-02T12:00:00+02:00', [], {}, true));
    expect([ended.checkIn.state, ended.soaks]).toEqual(['ended', null]);
  });

  it('answers the same when it is asked twice, in any order of check-ins', () => {
    const two = ['2026-03-28T20:00:00+01:00', '2026-03-29T20:00:00+02:00'];
    const now = '2026-03-30T12:00:00+02:00';
    expect(dueNow(question(now, two))).toEqual(dueNow(question(now, [...two].reverse())));
  });
});

describe('questions that are asked every time', () => {
  it.each([
    [10, [], 0],
    [9.9, [], 4],
    [null, [], 0],
    [40, ['neuropathy'], 4],
    [40, ['diabetes'], 0],
  ] as const)('with ITA %s° and %j there are %i', (itaDeg, risks, count) => {
    expect(askEveryTime(itaDeg, risks)).toHaveLength(count);
  });
});
