import { createReadStream } from 'node:fs';
import { keepWhole } from './keep-whole';
import { mapPath, type PhotoName, photoPath, viewPath } from './photo-path';

interface Wanted {
  readonly whole: readonly PhotoName[];
  readonly views: readonly PhotoName[];
  readonly maps: readonly PhotoName[];
}

/**
 * Copies files whose names say their hash, each checked on the way. One that is missing or damaged does not keep the
 * others from being copied.
 * @returns places of those that could not be copied, relative to nothing: as they were looked for
 */
export async function copyPhotos(from: string, to: string, { whole, views, maps }: Wanted): Promise<string[]> {
  const copies = [
    ...whole.map((name) => ({ name, source: photoPath(from, name), target: photoPath(to, name) })),
    ...views.map((name) => ({ name, source: viewPath(from, name), target: viewPath(to, name) })),
    ...maps.map((name) => ({ name, source: mapPath(from, name), target: mapPath(to, name) })),
  ];
  const lost: string[] = [];
  for (const { name, source, target } of copies) {
    const isKept = await keepWhole(target, name.sha256, bytesOf(source)).catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return false;
      throw error;
    });
    if (!isKept) lost.push(source);
  }
  return lost;
}

/** Opened when it is read: an error before that would have nobody to hear it. */
async function* bytesOf(source: string): AsyncGenerator<Uint8Array> {
  yield* createReadStream(source);
}
