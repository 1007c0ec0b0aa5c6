import { createEvents, type EventAttributes } from 'ics';
import { DateTime } from 'luxon';
import { HOURS_PER_DAY } from '../care/instant';
import type { PatientState } from '../care/patient-contract';
import { scheduleDay } from '../care/schedule-day';
import { foldLines } from './fold-lines';
import type { CalendarWords } from './plan-calendar-words';

/** Check-ins are put into the calendar for about the time of the soaks (common practice). */
const FOLLOWED_DAYS = 14;
/** In the evening, after a soak; never in the night in which clocks change. */
const CHECK_IN_AT_HOUR = 18;
const CHECK_IN_MINUTES = 10;

export type CalendarFacts = Pick<PatientState, 'clinic' | 'timeZone' | 'now' | 'procedureAt' | 'plan'>;

/**
 * The plan's days as a calendar file: when the first dressing comes off, and every check-in that is still to come. Times
 * are floating: they are what the clock on the wall says, wherever the phone is.
 *
 * @param facts plan, procedure and the moment
 * @param words in the patient's language
 * @param uidOf a name for each entry that stays the same when the file is made again
 * @returns the file's text; null where nothing is left to come
 * Source: RFC 5545 (library ics); floating time is its section 3.3.5, form 1.
 * @example planCalendar(facts, words, (name) => `${name}@clinic`)?.startsWith('BEGIN:VCALENDAR') // true
 */
export function planCalendar(facts: CalendarFacts, words: CalendarWords, uidOf: (name: string) => string): string | null {
  const call = words.call(facts.clinic.name, facts.clinic.phone);
  const nowLocal = DateTime.fromISO(facts.now, { zone: facts.timeZone });
  const dressing = DateTime.fromISO(facts.procedureAt, { zone: facts.timeZone }).plus({ hours: facts.plan.dressingStaysHours });
  const entries = [
    { name: 'dressing', at: dressing, title: words.dressingOff, description: `${words.dressingOffMore} ${call}` },
    ...checkInTimes(facts).map((at, i) => ({ name: `check-in-${i + 1}`, at, title: words.checkIn, description: `${words.checkInMore} ${call}` })),
  ].filter(({ at }) => at > nowLocal);
  if (entries.length === 0) return null;
  const { error, value } = createEvents(
    entries.map(({ name, at, title, description }): EventAttributes => ({
      uid: uidOf(name),
      calName: words.name,
      start: [at.year, at.month, at.day, at.hour, at.minute],
      startInputType: 'local',
      startOutputType: 'local',
      duration: { minutes: CHECK_IN_MINUTES },
      title,
      description,
      alarms: [{ action: 'display', description: title, trigger: { minutes: 0, before: true } }],
    })),
  );
  if (error || !value) throw new RangeError(`planCalendar: the entries were not accepted: ${error?.message ?? 'no text'}`);
  return foldLines(value);
}

/** By calendar days, as the plan counts them. */
function checkInTimes({ procedureAt, timeZone, plan }: CalendarFacts): DateTime[] {
  const first = DateTime.fromISO(scheduleDay(procedureAt, timeZone), { zone: timeZone });
  const everyDays = Math.max(1, Math.round(plan.checkInEveryHours / HOURS_PER_DAY));
  const times: DateTime[] = [];
  for (let day = everyDays; day <= FOLLOWED_DAYS; day += everyDays) times.push(first.plus({ days: day }).set({ hour: CHECK_IN_AT_HOUR }));
  return times;
}
