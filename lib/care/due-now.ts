import { DateTime } from 'luxon';
import { DEFAULT_DRESSING_STAYS_HOURS, DEFAULT_SOAK_DAYS } from './constants';
import { HOURS_PER_DAY, MS_PER_HOUR } from './instant';
import type { Plan } from './plan';
import { scheduleDaysSince } from './schedule-day';

export interface ScheduleQuestion {
  readonly procedureAt: string;
  readonly plan: Plan;
  /** Times of the check-ins that arrived, in any order. */
  readonly checkInsAt: readonly string[];
  readonly now: string;
  /** IANA zone of the patient. */
  readonly timeZone: string;
  /** Dryness was confirmed, or the case is closed: nothing is asked for any more. */
  readonly ended: boolean;
}

export interface DueNow {
  /** Calendar days since the procedure, 0 on its own day. */
  readonly day: number;
  readonly dressing: { readonly staysOn: boolean; readonly until: string };
  /** Null where the plan has none, where the dressing is still on, or after the last day of soaks. */
  readonly soaks: { readonly perDay: number; readonly minutes: number | null } | null;
  readonly checkIn: {
    /** `late`: its day has passed. `silent`: the grace has passed too, somebody asks. */
    readonly state: 'notYet' | 'due' | 'late' | 'silent' | 'ended';
    readonly silentFrom: string;
  };
}

/**
 * What the plan asks for at this moment. Asked twice it answers the same; nothing is counted or stored.
 *
 * @param question plan, what came, and the moment
 * @returns dressing, soaks and check-in; the check-in is judged by the patient's calendar days, silence by hours
 * @throws RangeError for an unknown zone
 * @example dueNow(question).checkIn.state // 'due'
 */
export function dueNow(question: ScheduleQuestion): DueNow {
  const { procedureAt, plan, now, timeZone } = question;
  const nowMs = Date.parse(now);
  const until = Date.parse(procedureAt) + (plan.dressingStaysHours ?? DEFAULT_DRESSING_STAYS_HOURS) * MS_PER_HOUR;
  const day = scheduleDaysSince(procedureAt, now, timeZone);
  const staysOn = nowMs < until;
  const soaking = !staysOn && !question.ended && (plan.soaksPerDay ?? 0) > 0 && day <= (plan.soakDays ?? DEFAULT_SOAK_DAYS);
  return {
    day,
    dressing: { staysOn, until: utc(until) },
    soaks: soaking ? { perDay: plan.soaksPerDay ?? 0, minutes: plan.soakMinutes ?? null } : null,
    checkIn: checkInState(question),
  };
}

const utc = (ms: number): string => DateTime.fromMillis(ms, { zone: 'utc' }).toISO() ?? '';

function checkInState({ procedureAt, plan, checkInsAt, now, timeZone, ended }: ScheduleQuestion): DueNow['checkIn'] {
  const nowMs = Date.parse(now);
  const newest = checkInsAt.map((at) => Date.parse(at)).filter((at) => at <= nowMs).reduce((a, b) => Math.max(a, b), Date.parse(procedureAt));
  const silentMs = newest + (plan.checkInEveryHours + plan.graceHours) * MS_PER_HOUR;
  const silentFrom = utc(silentMs);
  if (ended) return { state: 'ended', silentFrom };
  if (nowMs >= silentMs) return { state: 'silent', silentFrom };
  const daysPassed = scheduleDaysSince(utc(newest), now, timeZone);
  const everyDays = plan.checkInEveryHours / HOURS_PER_DAY;
  // Whole days by the calendar: who sent at noon yesterday may send at breakfast today.
  const daysOver = Number.isInteger(everyDays) ? daysPassed - everyDays : Math.floor((nowMs - newest) / MS_PER_HOUR / plan.checkInEveryHours) - 1;
  if (daysOver < 0) return { state: 'notYet', silentFrom };
  return { state: daysOver === 0 ? 'due' : 'late', silentFrom };
}
