import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import { mapPath, type PhotoName } from './photo-path';

/** A whole map unpacked; anything larger is not ours. */
const MOST_BYTES = 32 * 1024 * 1024;

/** A packed map made smaller for the disk. */
export const pressMap = async (packed: Uint8Array): Promise<Uint8Array> => new Uint8Array(await promisify(gzip)(packed));

/** A packed map as it was before it was pressed; null where there is no such file. */
export async function readPressedMap(folder: string, name: PhotoName): Promise<Uint8Array | null> {
  const pressed = await readFile(mapPath(folder, name)).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw error;
  });
  return pressed && new Uint8Array(await promisify(gunzip)(pressed, { maxOutputLength: MOST_BYTES }));
}
