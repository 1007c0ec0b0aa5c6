/** The clinic's own regimen. Regimens disagree (dry for a week, or soaks from the first day), so none is built in. */
import { z } from 'zod';
import { DEFAULT_PLAN } from './constants';

const hours = z.number().positive().max(24 * 14);

export const planSchema = z.strictObject({
  checkInEveryHours: hours.default(DEFAULT_PLAN.checkInEveryHours),
  /** How long after a missed check-in somebody asks. */
  graceHours: hours.default(DEFAULT_PLAN.graceHours),
  dressingStaysHours: hours.optional(),
  soaksPerDay: z.number().int().min(0).max(12).optional(),
  soakMinutes: z.number().positive().max(120).optional(),
  /** Soaks end after so many days; about two weeks by common practice. */
  soakDays: z.number().int().min(0).max(120).optional(),
  coverBetweenSoaks: z.boolean().optional(),
  notes: z.string().max(4000).optional(),
});
export type Plan = z.infer<typeof planSchema>;
