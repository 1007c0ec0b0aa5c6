/**
 * Real photos, tables and phantoms made by others lie beside the repository and never in it. Where the folder is
 * absent the tests that need it are skipped, and say so.
 */
import { existsSync } from 'node:fs';
import path from 'node:path';

export const SHARED_DATA = path.resolve(import.meta.dirname, '..', '..', 'shared', 'data');

/** True where `../shared/data/<folder>` is there; otherwise prints one line naming what is skipped. */
export function hasSharedData(folder: string): boolean {
  const there = existsSync(path.join(SHARED_DATA, folder));
  if (!there) console.warn(`skipped: ../shared/data/${folder} is not here, checks against it did not run`);
  return there;
}

/** The path of a file in the shared data. `sharedFile('decode', 'p3_red.png')` */
export const sharedFile = (...parts: string[]): string => path.join(SHARED_DATA, ...parts);
