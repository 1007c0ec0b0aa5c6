/** What the person at home says at a check-in. A question that was not asked is absent; absent is never "no". */
import { z } from 'zod';

/** Body temperatures outside this range are refused with a question: most are Fahrenheit, or the room's. */
export const BODY_TEMPERATURE_C = { least: 30, greatest: 43 } as const;

const asked = z.boolean().optional();

export const answersSchema = z.strictObject({
  /** Numeric rating, 0 no pain to 10 worst imaginable. */
  pain: z.number().int().min(0).max(10).optional(),
  wetness: z.enum(['dry', 'damp', 'wet']).optional(),
  dischargeColour: z.enum(['none', 'clear', 'yellow', 'green', 'bloody']).optional(),
  /** The last three are other words for thick (NHSN): a page may ask with one word, a record may hold any. */
  dischargeConsistency: z.enum(['none', 'watery', 'thick', 'creamy', 'opaque', 'milky']).optional(),
  smell: asked,
  feverC: z
    .number()
    .min(BODY_TEMPERATURE_C.least, 'Is this in degrees Celsius? A body temperature lies between 30 and 43 °C.')
    .max(BODY_TEMPERATURE_C.greatest, 'Is this in degrees Fahrenheit? A body temperature lies between 30 and 43 °C.')
    .optional(),
  chills: asked,
  confusion: asked,
  streaks: asked,
  spreadingSeen: asked,
  swelling: asked,
  warmth: asked,
  numb: asked,
  dusky: asked,
  cold: asked,
  boneVisible: asked,
  painOutOfProportion: asked,
  cornerTender: asked,
  proudTissue: asked,
  /** Blood keeps coming after twenty minutes of pressure with the foot raised. */
  bleedingAfterPressure: asked,
  /** Blood runs or drips, or the person feels faint: nobody waits for the end of the twenty minutes. */
  bloodRuns: asked,
});

export type Answers = z.infer<typeof answersSchema>;
