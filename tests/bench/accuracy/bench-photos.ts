import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { type CommonTruth, readTruth } from './common-truth';

export interface BenchPhoto {
  readonly name: string;
  readonly file: Uint8Array;
  readonly truth: CommonTruth;
}

/** Every photo below a folder that has a truth file beside it, in the order of the names. */
export async function* photosInFolder(folder: string): AsyncGenerator<BenchPhoto> {
  const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.truth.json')).sort();
  for (const truthName of names) {
    const name = truthName.replace('.truth.json', '.jpg');
    const truth = readTruth(name, JSON.parse(await readFile(path.join(folder, truthName), 'utf8')));
    yield { name, file: await readFile(path.join(folder, name)), truth };
  }
}
