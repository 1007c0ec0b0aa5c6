import { randomUUID } from 'node:crypto';
import { rename, rm, stat, writeFile } from 'node:fs/promises';

export interface FileToWrite {
  readonly path: string;
  readonly content: Uint8Array | string;
}

/** Says which of several files could not be written. */
export class NotWritten extends Error {
  constructor(
    readonly path: string,
    readonly why: NodeJS.ErrnoException,
  ) {
    super(`${path} could not be written: ${why.message}`, { cause: why });
  }
}

/**
 * Writes several files so that all of them are there whole or none of them is: all beside their places first, and renamed
 * once nothing stands in the way of any. @throws NotWritten
 */
export async function writeTogether(files: readonly FileToWrite[]): Promise<void> {
  const all = files.map((file) => ({ ...file, unfinished: `${file.path}.${randomUUID()}.part` }));
  try {
    for (const { path, unfinished, content } of all) await orSay(path, writeFile(unfinished, content, { flag: 'wx' }));
    for (const { path } of all) await orSay(path, refuseFolder(path));
    for (const { path, unfinished } of all) await orSay(path, rename(unfinished, path));
  } finally {
    for (const { unfinished } of all) await rm(unfinished, { force: true });
  }
}

const orSay = <Done>(path: string, doing: Promise<Done>): Promise<Done> =>
  doing.catch((error: NodeJS.ErrnoException) => {
    throw new NotWritten(path, error);
  });

/** A file cannot be renamed onto a folder; everything else that is there it replaces. */
async function refuseFolder(path: string): Promise<void> {
  const found = await stat(path).catch(() => null);
  if (found?.isDirectory()) throw Object.assign(new Error('it is a folder'), { code: 'EISDIR' });
}
