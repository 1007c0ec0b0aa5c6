/** One message from home: answers, and perhaps a photo with what was measured on it. */
import { z } from 'zod';
import { answersSchema } from './answers';
import { instantSchema } from './instant';
import { measurementsSchema } from './measurement-schema';

/** A failed gate by its id, or whole as the analysis writes it. */
const gateReasonSchema = z.union([
  z.string().min(1),
  z.strictObject({
    gate: z.string().min(1),
    measured: z.number().nullable(),
    limit: z.number().nullable(),
    advice: z.string(),
  }),
]);

export const photoSchema = z.strictObject({
  /** How the evidence of a finding names this photo; its check-in's time where there is no name. */
  id: z.string().min(1).optional(),
  measured: z.boolean(),
  reasons: z.array(gateReasonSchema).default([]),
  /** Individual typology angle of the reference skin. */
  itaDeg: z.number().nullish(),
  contrastToNoise: z.number().nullish(),
  /** When the server had it; later than the check-in where the phone was offline. */
  receivedAt: instantSchema.nullish(),
  measurements: measurementsSchema.default({}),
});
export type Photo = z.infer<typeof photoSchema>;

export const checkInSchema = z.strictObject({
  id: z.string().min(1).optional(),
  at: instantSchema,
  answers: answersSchema.default({}),
  photo: photoSchema.nullish(),
});
export type CheckIn = z.infer<typeof checkInSchema>;
