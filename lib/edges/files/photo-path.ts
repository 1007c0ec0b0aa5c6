import path from 'node:path';

const ID = /^[\w-]{1,64}$/;
const SHA256 = /^[0-9a-f]{64}$/;

/** Which file: of one episode, by the hash of its content. The same picture of two people is two files. */
export interface PhotoName {
  readonly episodeId: string;
  readonly sha256: string;
}

function checked({ episodeId, sha256 }: PhotoName): PhotoName {
  if (!ID.test(episodeId) || !SHA256.test(sha256)) {
    throw new RangeError(`photoPath: an id and 64 hexadecimal digits are needed, received ${JSON.stringify({ episodeId, sha256 })}`);
  }
  return { episodeId, sha256 };
}

/** Where a whole photo lies. */
export function photoPath(folder: string, name: PhotoName): string {
  const { episodeId, sha256 } = checked(name);
  return path.join(folder, 'whole', episodeId, sha256);
}

/** Where what has arrived of a photo waits for the rest. */
export function unfinishedPath(folder: string, name: PhotoName, lengthBytes: number): string {
  const { episodeId, sha256 } = checked(name);
  return path.join(folder, 'unfinished', episodeId, `${sha256}.${lengthBytes}`);
}

/** Where the packed map lies from which outlines are drawn anew. */
export function mapPath(folder: string, name: PhotoName): string {
  const { episodeId, sha256 } = checked(name);
  return path.join(folder, 'maps', episodeId, `${sha256}.gz`);
}

/** Where the picture made for people's eyes lies: upright, smaller, without the original's tags. */
export function viewPath(folder: string, name: PhotoName): string {
  const { episodeId, sha256 } = checked(name);
  return path.join(folder, 'views', episodeId, `${sha256}.jpg`);
}
