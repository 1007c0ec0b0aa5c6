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
