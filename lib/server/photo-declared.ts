import { z } from 'zod';
import { clientIdSchema, PHOTO_HEADERS, photoKindSchema, type PhotoKind } from '../care/patient-contract';
import { LARGEST_PHOTO_BYTES } from '../edges/files/receive-piece';
import { type Answer, refusal } from './answer';

export interface DeclaredPhoto {
  readonly clientId: string;
  readonly sha256: string;
  readonly kind: PhotoKind;
  readonly lengthBytes: number;
}

const schema = z.object({
  clientId: clientIdSchema,
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  kind: photoKindSchema,
  lengthBytes: z.coerce.number().int().min(1),
});

/** What the phone says about the photo it sends, or why that cannot be taken. */
export function photoDeclared(clientId: string, headers: Headers): { declared: DeclaredPhoto } | { refused: Answer } {
  const read = schema.safeParse({
    clientId,
    sha256: headers.get(PHOTO_HEADERS.sha256),
    kind: headers.get(PHOTO_HEADERS.kind),
    lengthBytes: headers.get(PHOTO_HEADERS.lengthBytes),
  });
  if (!read.success) return { refused: refusal(400, 'notUnderstood', { detail: z.prettifyError(read.error) }) };
  if (read.data.lengthBytes > LARGEST_PHOTO_BYTES) return { refused: refusal(413, 'photoTooLarge', { mostBytes: LARGEST_PHOTO_BYTES }) };
  return { declared: read.data };
}
