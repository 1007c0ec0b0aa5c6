/** What was done, recorded once on the day. */
import { z } from 'zod';
import { instantSchema } from './instant';

/** Whether, and how long, a chemical was put on the matrix: it decides how long redness and weeping are expected. */
export const MATRICECTOMIES = ['none', 'naoh', 'phenol30', 'phenol60', 'unknown'] as const;
export const matricectomySchema = z.enum(MATRICECTOMIES);
export type Matricectomy = z.infer<typeof matricectomySchema>;

export const procedureSchema = z.strictObject({
  at: instantSchema,
  matricectomy: matricectomySchema,
  treatedSides: z.array(z.enum(['medial', 'lateral'])).max(2).optional(),
  /** Width of the strip of nail that was removed. */
  stripMm: z.number().positive().max(20).nullish(),
  /** The edge left behind: cut in one line, or with a spike or a torn end. */
  edge: z.enum(['whole', 'spike', 'torn', 'unknown']).optional(),
  pusSeen: z.boolean().nullish(),
  boneFelt: z.boolean().nullish(),
  anaestheticAt: instantSchema.nullish(),
});
export type Procedure = z.infer<typeof procedureSchema>;
