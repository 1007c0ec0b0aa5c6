import { randomUUID } from 'node:crypto';
import { rename, rm, writeFile } from 'node:fs/promises';

/** Writes a file so that it is there whole or not at all: beside its place first, then renamed. */
export async function writeWholeFile(path: string, content: Uint8Array | string): Promise<void> {
  const unfinished = `${path}.${randomUUID()}.part`;
  try {
    await writeFile(unfinished, content, { flag: 'wx' });
    await rename(unfinished, path);
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  }
}
