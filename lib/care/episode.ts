/** One toe from the procedure until the case is closed: everything the rules may know. */
import { z } from 'zod';
import { checkInSchema } from './check-in';
import { instantSchema } from './instant';
import { planSchema } from './plan';
import { procedureSchema } from './procedure';
import { riskSchema } from './risks';

/** A person's word on a finding. Only this, or a rule that says so, closes one. */
export const resolutionSchema = z.strictObject({
  rule: z.string().min(1),
  at: instantSchema,
  by: z.string().min(1),
  reason: z.string().min(1),
  /** For "dry": whether the person agreed. Absent counts as agreed. */
  outcome: z.enum(['confirmed', 'dismissed']).optional(),
});
export type Resolution = z.infer<typeof resolutionSchema>;

export const episodeSchema = z.strictObject({
  /** Named in the answer, so that many episodes can be told apart. */
  id: z.string().min(1).optional(),
  procedure: procedureSchema,
  risks: z.array(riskSchema).default([]),
  plan: planSchema.prefault({}),
  antibioticStartedAt: instantSchema.nullish(),
  /** The moment the question is asked. Nothing later is known. */
  now: instantSchema,
  checkIns: z.array(checkInSchema),
  resolutions: z.array(resolutionSchema).default([]),
  closedAt: instantSchema.nullish(),
});
export type Episode = z.infer<typeof episodeSchema>;
/** As written in a file: what has a default may be left out. */
export type EpisodeJson = z.input<typeof episodeSchema>;
