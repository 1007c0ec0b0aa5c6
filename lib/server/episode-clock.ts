import { DateTime } from 'luxon';
import { HOURS_PER_DAY, MS_PER_HOUR } from '../care/instant';

/** The clinic's way to write an instant, and the days of the course. */
export interface EpisodeClock {
  readonly at: (instant: Date) => string;
  readonly date: (instant: Date) => string;
  /** Days since the procedure. */
  readonly dayOf: (instant: Date) => number;
}

/** `episodeClock(procedureAt, 'Europe/London').at(date)` → '12 Nov 2026, 09:30' */
export const episodeClock = (procedureAt: Date, timeZone: string): EpisodeClock => ({
  at: (instant) => DateTime.fromJSDate(instant, { zone: timeZone }).toFormat('d LLL yyyy, HH:mm'),
  date: (instant) => DateTime.fromJSDate(instant, { zone: timeZone }).toFormat('d LLL'),
  dayOf: (instant) => (instant.getTime() - procedureAt.getTime()) / (MS_PER_HOUR * HOURS_PER_DAY),
});
