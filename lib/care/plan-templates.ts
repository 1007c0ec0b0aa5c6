/** Regimens to begin with. Regimens disagree, so a clinic changes these and adds its own. Common practice. */
import { z } from 'zod';
import { planSchema, type Plan } from './plan';

/** What stands on paper has an end. */
const MOST_NOTE_LETTERS = 400;

export const planTemplateSchema = z.strictObject({
  name: z.string().trim().min(2).max(80),
  plan: planSchema.required({ dressingStaysHours: true, soaksPerDay: true, soakMinutes: true, soakDays: true, coverBetweenSoaks: true }).extend({
    notes: z.string().trim().max(MOST_NOTE_LETTERS).optional(),
  }),
});
export type PlanTemplate = z.infer<typeof planTemplateSchema>;

const plan = (more: Partial<Plan>): PlanTemplate['plan'] => ({
  checkInEveryHours: 24,
  graceHours: 36,
  dressingStaysHours: 24,
  soaksPerDay: 2,
  soakMinutes: 10,
  soakDays: 14,
  coverBetweenSoaks: true,
  ...more,
});

export const FIRST_PLAN_TEMPLATES: readonly PlanTemplate[] = [
  { name: 'Dressing 24 h, then two soaks a day for two weeks', plan: plan({}) },
  { name: 'Dressing 48 h, then one soak a day for two weeks', plan: plan({ dressingStaysHours: 48, soaksPerDay: 1 }) },
  { name: 'Dressing 72 h, kept dry, no soaks', plan: plan({ dressingStaysHours: 72, soaksPerDay: 0, soakDays: 0 }) },
];
