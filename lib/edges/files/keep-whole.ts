import { createHash, randomUUID } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import path from 'node:path';

/** The names in a folder are on the disk only after the folder itself was written out. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/**
 * Writes a file under a name that says its hash: beside its place first, counted and hashed on the way, written out to
 * the disk, then renamed. At no moment is anything less than the whole file under the final name.
 * @returns false, and no file, where the content's hash is another
 */
export async function keepWhole(file: string, sha256: string, content: AsyncIterable<Uint8Array>): Promise<boolean> {
  const folder = path.dirname(file);
  if ((await mkdir(folder, { recursive: true })) !== undefined) await syncFolder(path.dirname(folder));
  const beside = `${file}.${randomUUID()}.part`;
  try {
    const hash = createHash('sha256');
    const handle = await open(beside, 'wx');
    try {
      for await (const piece of content) {
        hash.update(piece);
        await handle.writeFile(piece);
      }
      await handle.sync();
    } finally {
      await handle.close();
    }
    if (hash.digest('hex') !== sha256) return false;
    await rename(beside, file);
    await syncFolder(folder);
    return true;
  } finally {
    await rm(beside, { force: true });
  }
}
