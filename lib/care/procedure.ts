/** What was done, recorded once on the day. */
import { z } from 'zod';
import { instantSchema } from './instant';

/** Whether, and how long, a chemical was put on the matrix: it decides how long redness and weeping are expected. */
export const MATRICECTOMIES = ['none', 'naoh', 'phenol30', 'phenol60', 'unknown'] as const;
export const matricectomySchema = z.enum(MATRICECTOMIES);
export type Matricectomy = z.infer<typeof matricectomySchema>;

export const FEET = ['left', 'right'] as const;
export const SIDES = ['medial', 'lateral'] as const;
export const EDGES = ['whole', 'spike', 'torn', 'unknown'] as const;
/** Agreed on the day, so that nobody has to look for it when the nail grows in again. */
export const IF_IT_FAILS = ['partialAgain', 'withMatricectomy', 'wholeNail', 'refer'] as const;

export const procedureSchema = z.strictObject({
  at: instantSchema,
  matricectomy: matricectomySchema,
  treatedSides: z.array(z.enum(SIDES)).max(2).optional(),
  /** Width of the strip of nail that was removed. */
  stripMm: z.number().positive().max(20).nullish(),
  /** The edge left behind: cut in one line, or with a spike or a torn end. */
  edge: z.enum(EDGES).optional(),
  pusSeen: z.boolean().nullish(),
  boneFelt: z.boolean().nullish(),
  anaestheticAt: instantSchema.nullish(),
  foot: z.enum(FEET).nullish(),
  ifItFails: z.enum(IF_IT_FAILS).nullish(),
});
export type Procedure = z.infer<typeof procedureSchema>;
