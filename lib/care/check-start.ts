import { OLDEST_PATIENT_YEARS, START_AT_MOST_DAYS_LATE, START_CLOCK_SLACK_HOURS, ANAESTHETIC_AT_MOST_HOURS } from './constants';
import { HOURS_PER_DAY, hoursBetweenInstants } from './instant';
import type { StartBody } from './start-contract';

type Checked = Pick<StartBody, 'procedure' | 'antibioticStartedAt' | 'birthYear'>;

/**
 * What cannot be right about an episode that is being started: times in an impossible order, a side that was forgotten,
 * a year in which nobody who lives was born.
 *
 * @param start as entered
 * @param now ISO 8601 with offset
 * @param asksBirthYear whether the clinic asks for the year of birth after the link
 * @returns one sentence that says what to mend; null where nothing is wrong
 * @example checkStart({ procedure: { at: '2026-03-02T09:00:00Z', matricectomy: 'none', treatedSides: [] }, antibioticStartedAt: null, birthYear: null }, '2026-03-02T10:00:00Z', false) // 'Which side was treated? Choose one or both.'
 */
export function checkStart({ procedure, antibioticStartedAt, birthYear }: Checked, now: string, asksBirthYear: boolean): string | null {
  const { at, anaestheticAt, treatedSides = [] } = procedure;
  if (treatedSides.length === 0) return 'Which side was treated? Choose one or both.';
  if (hoursBetweenInstants(now, at) > START_CLOCK_SLACK_HOURS) return 'The procedure lies in the future. Is the time right?';
  if (hoursBetweenInstants(at, now) > START_AT_MOST_DAYS_LATE * HOURS_PER_DAY) {
    return `The procedure lies more than ${START_AT_MOST_DAYS_LATE} days back. Is the date right?`;
  }
  if (anaestheticAt && Math.abs(hoursBetweenInstants(anaestheticAt, at)) > ANAESTHETIC_AT_MOST_HOURS) {
    return `The anaesthetic and the procedure lie more than ${ANAESTHETIC_AT_MOST_HOURS} hours apart. Is the time right?`;
  }
  if (antibioticStartedAt && hoursBetweenInstants(now, antibioticStartedAt) > START_CLOCK_SLACK_HOURS) {
    return 'The antibiotic was started in the future. Is the time right?';
  }
  return birthYearProblem(birthYear, Number(now.slice(0, 4)), asksBirthYear);
}

function birthYearProblem(birthYear: number | null, year: number, asked: boolean): string | null {
  if (birthYear === null) return asked ? 'This clinic asks for the year of birth after the link. Enter it.' : null;
  return birthYear > year || birthYear < year - OLDEST_PATIENT_YEARS ? `Nobody who lives was born in ${birthYear}. Is the year right?` : null;
}
