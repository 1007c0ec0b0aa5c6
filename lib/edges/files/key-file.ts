/** A key in a file of its own, so that whoever has the database alone cannot open what is sealed in it. */
import { randomBytes } from 'node:crypto';
import { mkdir, open, readFile } from 'node:fs/promises';
import path from 'node:path';

const KEY_BYTES = 32;
/** Only the program's own account may read it. */
const OWNER_ONLY = 0o600;

/** The key; null where there is no such file. @throws where the file holds no key */
export async function readKeyFile(file: string): Promise<Uint8Array | null> {
  const text = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw error;
  });
  if (text === null) return null;
  const key = Buffer.from(text.trim(), 'base64url');
  if (key.length !== KEY_BYTES) throw new Error(`The file ${file} (FOLDWATCH_KEY_FILE) holds no key: ${KEY_BYTES} bytes in base64url are needed, it has ${key.length}.`);
  return key;
}

/** Makes one where there is none; never writes over one. @returns the key that is there afterwards */
export async function makeKeyFile(file: string): Promise<Uint8Array> {
  await mkdir(path.dirname(file), { recursive: true });
  try {
    const handle = await open(file, 'wx', OWNER_ONLY);
    try {
      await handle.writeFile(`${randomBytes(KEY_BYTES).toString('base64url')}\n`);
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    // Another process was quicker.
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  const key = await readKeyFile(file);
  if (key === null) throw new Error(`The key ${file} could not be made.`);
  return key;
}
