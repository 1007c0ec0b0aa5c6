/** Published criteria at their edges. */
import { describe, expect, it } from 'vitest';
import { surveillanceScheduleDay } from '../../../lib/care/schedule-day';
import { judge, levelsOf, photo } from '../../unit/decide/invented-course';

describe('IWGDF/IDSA 2023, by analogy: erythema beyond 5 mm is mild, from 20 mm on moderate', () => {
  const withSign = (reach: number) => judge([{ hours: 100, answers: { warmth: true }, photo: photo({ reach: [reach, 0] }) }]);

  it.each([
    [4.9, []],
    [5.0, []],
    [5.1, ['soon']],
    [19.9, ['soon']],
  ])('%f mm with one more sign: mild %j', (reach, levels) => {
    expect(levelsOf('reach-mild', withSign(reach))).toEqual(levels);
  });

  it.each([
    [19.9, []],
    [20.0, ['today']],
    [20.1, ['today']],
  ])('%f mm: moderate %j', (reach, levels) => {
    expect(levelsOf('reach-moderate', withSign(reach))).toEqual(levels);
  });
});

// CDC/NHSN, surgical site infection FAQ: at least one colour (green, yellow) and one consistency (milky, thick, creamy, opaque).
describe('NHSN, purulent discharge: a colour and a consistency', () => {
  const COLOURS = { none: false, clear: false, bloody: false, yellow: true, green: true } as const;
  const CONSISTENCIES = { none: false, watery: false, thick: true, creamy: true, opaque: true, milky: true } as const;
  const rows = Object.entries(COLOURS).flatMap(([colour, coloured]) =>
    Object.entries(CONSISTENCIES).map(([consistency, thick]) => [colour, consistency, coloured && thick] as const),
  );

  it.each(rows)('%s and %s: %s', (colour, consistency, purulent) => {
    const answers = { dischargeColour: colour as keyof typeof COLOURS, dischargeConsistency: consistency as keyof typeof CONSISTENCIES };
    expect(levelsOf('purulent', judge([{ hours: 50, answers }]))).toEqual(purulent ? ['soon'] : []);
  });

  it('is not said where one of the two was not asked', () => {
    expect(levelsOf('purulent', judge([{ hours: 50, answers: { dischargeColour: 'green' } }, { hours: 60, answers: { dischargeConsistency: 'thick' } }]))).toEqual([]);
  });
});

describe('NHSN, the 30-day window: day 1 is the day of the procedure', () => {
  it.each([
    ['2026-03-02T23:00:00+01:00', 1],
    ['2026-03-03T08:00:00+01:00', 2],
    ['2026-03-31T22:00:00+02:00', 30],
    ['2026-04-01T09:00:00+02:00', 31],
  ])('%s is day %i', (instant, day) => {
    expect(surveillanceScheduleDay('2026-03-02T09:00:00+01:00', instant, 'Europe/Berlin')).toBe(day);
  });
});

// SIRS items as in the IWGDF/IDSA severe grade, and the rule book's own limits.
describe('temperature', () => {
  it.each([
    [37.9, []],
    [38, ['now']],
    [38.1, ['now']],
    [36, []],
    [35.9, []],
  ])('%f °C once: %j', (feverC, levels) => {
    expect(levelsOf('streak-or-fever', judge([{ hours: 50, answers: { feverC } }]))).toEqual(levels);
  });
});
