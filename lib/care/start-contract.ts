/** What the staff's pages and the server say to each other when an episode is started. */
import { z } from 'zod';
import { instantSchema } from './instant';
import { procedureSchema } from './procedure';
import { riskSchema } from './risks';

export const LANGUAGES = ['en', 'es'] as const;

/** Photos that staff take on the day: before the procedure, for redness that was there already, and straight after. */
export const PROCEDURE_PHOTOS = ['before', 'after'] as const;
export const procedurePhotoSchema = z.enum(PROCEDURE_PHOTOS);
export type ProcedurePhoto = z.infer<typeof procedurePhotoSchema>;

/** Body of `POST /api/staff/episodes`. No name and no date of birth: a case code is all that tells people apart. */
export const startBodySchema = z.strictObject({
  /** Named by the page before anything is sent, so that pressing twice starts one episode. */
  id: z.uuid(),
  procedure: procedureSchema.required({ treatedSides: true }),
  risks: z.array(riskSchema).max(20),
  antibioticStartedAt: instantSchema.nullable(),
  language: z.enum(LANGUAGES),
  /** The second secret beside the link, where the clinic asks for one. */
  birthYear: z.number().int().nullable(),
  planTemplateId: z.string().min(1),
});
export type StartBody = z.infer<typeof startBodySchema>;

/** Answer to it. The link's secret is told this once and kept nowhere. */
export interface Started {
  readonly episodeId: string;
  readonly caseCode: string;
  readonly link: HandedLink;
  readonly cardSerial: string;
}

/** A personal link as it is told once. */
export interface HandedLink {
  readonly address: string;
  readonly secret: string;
}
