/** Numbers of the job that are no clinical limits. Those live in `decide/rule-book.ts`, where a clinic may change them. */

/** Before this hour a photo still belongs to the day before: people who are up late are not a day ahead. Ours. */
export const SCHEDULE_DAY_BEGINS_AT_HOUR = 4;
/** Where a clinic has set no plan of its own. Ours (the rule book's "silent"). */
export const DEFAULT_PLAN = { checkInEveryHours: 24, graceHours: 36 } as const;
/** The first dressing stays on for a day; soaks follow for about two weeks. Common practice; each clinic's plan comes first. */
export const DEFAULT_DRESSING_STAYS_HOURS = 24;
export const DEFAULT_SOAK_DAYS = 14;
/** Redness may be hard to see on skin darker than this (individual typology angle): the lower bound of "tan", Del Bino and Bernerd 2013. */
export const DARKER_SKIN_BELOW_ITA_DEG = 10;
/** A phone's clock may be off by less than this; beyond it a date is wrong, not a clock. Ours. */
export const MOST_CLOCK_ERROR_HOURS = 24;
/** An episode may be typed in after a weekend and a holiday. Ours. */
export const START_AT_MOST_DAYS_LATE = 14;
/** The clock of the desk may run ahead by so much. Ours. */
export const START_CLOCK_SLACK_HOURS = 0.5;
/** The block is given on the same half day. Ours. */
export const ANAESTHETIC_AT_MOST_HOURS = 12;
/** Of no use to anybody beyond it. Ours. */
export const OLDEST_PATIENT_YEARS = 120;
/** A personal link ends so long after it was made: the latest "late" day of the rule book and a week. Ours. */
export const LINK_DAYS = 120;
/** After a follow-up was closed the link opens for so long, and says whom to call. Ours. */
export const CLOSED_LINK_DAYS = 30;
