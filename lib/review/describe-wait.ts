const MINUTES_PER_HOUR = 60;
const MINUTES_PER_DAY = 1440;
/** From two days on minutes and hours tell nobody more. */
const DAYS_FROM = 2 * MINUTES_PER_DAY;

/** How long a case has waited, in words and as a share of the clinic's limit. */
export interface Wait {
  readonly words: string;
  /** 0 … 1 and above; null where the clinic has set no limit. */
  readonly shareOfLimit: number | null;
  readonly isOver: boolean;
}

/**
 * A length of time as a nurse would say it.
 *
 * @param minutes 0 or more
 * @returns minutes up to an hour, hours and minutes up to two days, then whole days
 * @example saySpan(190) // '3 h 10 min'
 */
export function saySpan(minutes: number): string {
  const whole = Math.max(0, Math.floor(minutes));
  if (whole >= DAYS_FROM) return `${Math.floor(whole / MINUTES_PER_DAY)} days`;
  const [hours, rest] = [Math.floor(whole / MINUTES_PER_HOUR), whole % MINUTES_PER_HOUR];
  return [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : ''].filter(Boolean).join(' ');
}

/**
 * The wait against the limit: how much is left, or by how much it is over.
 *
 * @param waitedMinutes since it could be known
 * @param limitMinutes the clinic's own; null where it has set none
 * @example describeWait(300, 240).words // 'waited 5 h, 1 h over the limit of 4 h'
 */
export function describeWait(waitedMinutes: number, limitMinutes: number | null): Wait {
  const waited = `waited ${saySpan(waitedMinutes)}`;
  if (limitMinutes === null) return { words: `${waited}, no limit set`, shareOfLimit: null, isOver: false };
  const isOver = waitedMinutes > limitMinutes;
  const against = isOver
    ? `${saySpan(waitedMinutes - limitMinutes)} over the limit of ${saySpan(limitMinutes)}`
    : `limit ${saySpan(limitMinutes)}`;
  return { words: `${waited}, ${against}`, shareOfLimit: waitedMinutes / limitMinutes, isOver };
}
