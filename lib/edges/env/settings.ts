/** Everything the program is told by its environment. Wrong values stop it at the start, by name. */
import path from 'node:path';
import { z } from 'zod';

const settingsSchema = z.object({
  /** Folder of the database and the photos; on a local disk. */
  FOLDWATCH_DATA: z.string().min(1).default(path.join('out', 'data')),
  /** The address people type, such as https://clinic.example. Without it the request's own host counts. */
  FOLDWATCH_ORIGIN: z.url({ protocol: /^https?$/ }).transform((address) => new URL(address).origin).optional(),
  /** Where the key lies with which second factors are sealed and the staff's cookies signed; kept and backed up apart from the database. */
  FOLDWATCH_KEY_FILE: z.string().min(1).optional(),
  /** After so long a worker that has not finished a photo is taken for dead. */
  FOLDWATCH_LEASE_SECONDS: z.coerce.number().min(1).default(60),
});

export interface Settings {
  readonly databaseFile: string;
  readonly photoFolder: string;
  readonly keyFile: string;
  readonly origin: string | null;
  readonly leaseMs: number;
}

/** Reads them: `readSettings().databaseFile`. The argument is for tests. */
export function readSettings(environment: Readonly<Record<string, string | undefined>> = process.env): Settings {
  const read = settingsSchema.safeParse(environment);
  if (!read.success) throw new Error(`The environment cannot be used. ${z.prettifyError(read.error)}`);
  // turbopackIgnore: the folder is told at run time, nothing in it belongs to the build.
  const data = path.resolve(/* turbopackIgnore: true */ read.data.FOLDWATCH_DATA);
  return {
    databaseFile: path.join(data, 'foldwatch.sqlite'),
    photoFolder: path.join(data, 'photos'),
    keyFile: path.resolve(/* turbopackIgnore: true */ read.data.FOLDWATCH_KEY_FILE ?? path.join(data, 'second-factor.key')),
    origin: read.data.FOLDWATCH_ORIGIN ?? null,
    leaseMs: read.data.FOLDWATCH_LEASE_SECONDS * 1000,
  };
}
