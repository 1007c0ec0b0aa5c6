/**
 * What the patient's page and the server say to each other. The photo itself travels raw, in pieces, outside of this
 * file: `PUT …/photo` with the headers named below.
 */
import { z } from 'zod';
import { answersSchema } from './answers';

/** Every check-in is named by the phone before anything is sent, so that sending twice is sending once. */
export const clientIdSchema = z.uuid();

/** `toe` is measured; `dressing` is kept for a person to look at and never measured. */
export const photoKindSchema = z.enum(['toe', 'dressing']);
export type PhotoKind = z.infer<typeof photoKindSchema>;

export const PHOTO_HEADERS = {
  sha256: 'x-photo-sha256',
  lengthBytes: 'x-photo-length',
  kind: 'x-photo-kind',
} as const;

/** Answer to `PUT …/photo?offset=N` and `GET …/photo`: how much the server holds safely. */
export const photoReceiptSchema = z.strictObject({
  receivedBytes: z.number().int().min(0),
  /** All bytes are there, the hash agrees, and the file is on disk. Only now may the phone forget its copy. */
  complete: z.boolean(),
});
export type PhotoReceipt = z.infer<typeof photoReceiptSchema>;

/** Answer to `GET …/photo/verdict`: the first word on the photo. It never says how the toe does. */
export const photoVerdictSchema = z.discriminatedUnion('state', [
  z.strictObject({ state: z.literal('waiting') }),
  z.strictObject({ state: z.literal('gotIt') }),
  /** `gates` are ids of `photo/reasons`; the page has a sentence for each in every language. */
  z.strictObject({ state: z.literal('retake'), gates: z.array(z.string()).min(1) }),
  /** It could not be worked on; it is kept, and a person looks. */
  z.strictObject({ state: z.literal('aPersonLooks') }),
]);
export type PhotoVerdict = z.infer<typeof photoVerdictSchema>;

/** Body of `PUT …/check-ins/CLIENT_ID`. */
export const checkInBodySchema = z.strictObject({
  kind: z.enum(['daily', 'firstDay']),
  /** When the person pressed send, by the phone's clock, with its offset. */
  at: z.iso.datetime({ offset: true }),
  answers: answersSchema,
  worry: z.string().max(2000).optional(),
  hasPhoto: z.boolean(),
});
export type CheckInBody = z.infer<typeof checkInBodySchema>;

/** Answer to it. */
export const checkInReceiptSchema = z.strictObject({
  clientId: clientIdSchema,
  receivedAt: z.iso.datetime({ offset: true }),
  /** A warning sign is among the answers: the page shows whom to call, before anything else. */
  callNow: z.boolean(),
});
export type CheckInReceipt = z.infer<typeof checkInReceiptSchema>;

/** Answer to `GET /api/patient/state`: all that today's page shows. */
export const patientStateSchema = z.strictObject({
  clinic: z.strictObject({ name: z.string(), phone: z.string(), emergencyPhone: z.string(), openingHours: z.string() }),
  language: z.enum(['en', 'es']),
  timeZone: z.string(),
  now: z.iso.datetime({ offset: true }),
  procedureAt: z.iso.datetime({ offset: true }),
  plan: z.strictObject({
    dressingStaysHours: z.number().positive(),
    soaksPerDay: z.number().int().min(0),
    soakMinutes: z.number().positive(),
    coverBetweenSoaks: z.boolean(),
    checkInEveryHours: z.number().positive(),
    graceHours: z.number().positive(),
    notes: z.string(),
  }),
  /** Times at which check-ins reached the clinic, newest first. */
  received: z.array(z.strictObject({ clientId: clientIdSchema, at: z.iso.datetime({ offset: true }), kind: z.enum(['daily', 'firstDay']) })),
  /** Messages from the clinic's staff, newest first. */
  messages: z.array(z.strictObject({ at: z.iso.datetime({ offset: true }), text: z.string() })),
  /** Asked every time where skin tone or nerves hide redness and pain. */
  askEveryTime: z.array(z.enum(['warmth', 'swelling', 'pain', 'discharge'])),
  closed: z.boolean(),
});
export type PatientState = z.infer<typeof patientStateSchema>;
