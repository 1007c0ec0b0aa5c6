import { DateTime } from 'luxon';
import { SCHEDULE_DAY_BEGINS_AT_HOUR } from './constants';

const MS_PER_DAY = 86_400_000;

/**
 * The calendar day something belongs to where the patient lives; the night until 04:00 counts to the day before.
 *
 * @param instant ISO 8601 with offset
 * @param timeZone IANA zone of the patient
 * @returns a date, YYYY-MM-DD
 * @throws RangeError for an unknown zone or no instant
 * Calendar arithmetic only: on the two days of a clock change a day has 23 or 25 hours and is one day all the same.
 * @example scheduleDay('2026-03-29T01:30:00Z', 'Europe/Berlin') // '2026-03-28'
 */
export function scheduleDay(instant: string, timeZone: string): string {
  const local = DateTime.fromISO(instant, { zone: timeZone });
  if (!local.isValid) throw new RangeError(`scheduleDay: an instant and an IANA zone are needed, received ${instant} and ${timeZone}`);
  return (local.hour < SCHEDULE_DAY_BEGINS_AT_HOUR ? local.minus({ days: 1 }) : local).toISODate();
}

/**
 * Whole days from one date to another.
 *
 * @param from YYYY-MM-DD
 * @param to YYYY-MM-DD
 * @returns 0 for the same date; below 0 where `to` comes first
 * @example daysBetweenDates('2026-03-28', '2026-03-30') // 2
 */
export const daysBetweenDates = (from: string, to: string): number =>
  // A date alone is read as midnight in UTC, where no clock changes.
  Math.round((Date.parse(to) - Date.parse(from)) / MS_PER_DAY);

/**
 * Whole calendar days from the procedure's day to the day of an instant, in the patient's zone.
 *
 * @param procedureAt ISO 8601 with offset
 * @param instant ISO 8601 with offset
 * @param timeZone IANA zone of the patient
 * @returns 0 on the procedure's own day
 * @example scheduleDaysSince('2026-03-28T09:00:00+01:00', '2026-03-29T09:00:00+02:00', 'Europe/Berlin') // 1
 */
export const scheduleDaysSince = (procedureAt: string, instant: string, timeZone: string): number =>
  daysBetweenDates(scheduleDay(procedureAt, timeZone), scheduleDay(instant, timeZone));

/**
 * Day of the surveillance window, counted as surgeons do: the procedure's day is day 1, the window has 30.
 *
 * @param procedureAt ISO 8601 with offset
 * @param instant ISO 8601 with offset
 * @param timeZone IANA zone of the patient
 * @returns 1 on the procedure's own day
 * Source: CDC/NHSN, superficial incisional infection, "within 30 days, where day 1 = the procedure date".
 * @example surveillanceScheduleDay('2026-03-01T09:00:00Z', '2026-03-30T09:00:00Z', 'UTC') // 30
 */
export const surveillanceScheduleDay = (procedureAt: string, instant: string, timeZone: string): number =>
  scheduleDaysSince(procedureAt, instant, timeZone) + 1;
