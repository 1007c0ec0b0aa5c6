import { z } from 'zod';

/** A point in time: ISO 8601 with its offset, so that it means the same everywhere. */
export const instantSchema = z.iso.datetime({
  offset: true,
  error: 'A time is written as in 2026-03-01T09:30:00+01:00, with its offset from UTC.',
});

export const MS_PER_HOUR = 3_600_000;
export const HOURS_PER_DAY = 24;

/**
 * Hours that lie between two points in time; clock changes do not count, an hour is an hour.
 *
 * @param from ISO 8601 with offset
 * @param to ISO 8601 with offset
 * @returns hours, negative where `to` comes first
 * @example hoursBetweenInstants('2026-03-01T09:00:00+01:00', '2026-03-02T09:30:00+02:00') // 23.5
 */
export const hoursBetweenInstants = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / MS_PER_HOUR;
