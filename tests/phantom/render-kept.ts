import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { PhantomSpec } from './phantom-spec';
import type { PhantomTruth } from './phantom-truth';
import { renderEach } from './render-many';
import type { Phantom } from './render-phantom';

const FOLDER = path.join(os.tmpdir(), 'foldwatch-phantoms-kept');

/** Phantoms take seconds each: those of a spec that was rendered before are kept in the system's temporary place. */
export async function renderKept(specs: readonly PhantomSpec[], take: (index: number, phantom: Phantom) => Promise<void>, workers: number): Promise<void> {
  await mkdir(FOLDER, { recursive: true });
  const places = specs.map(placeOf);
  const missing = specs.flatMap((_, index) => (existsSync(`${places[index]}.json`) ? [] : [index]));
  await renderEach(missing.map((index) => specs[index]), async (at, phantom) => {
    const place = places[missing[at]];
    await writeWhole(`${place}.jpg`, phantom.jpeg);
    await writeWhole(`${place}.json`, JSON.stringify(phantom.truth));
  }, workers);
  for (const [index, place] of places.entries()) {
    await take(index, { jpeg: new Uint8Array(await readFile(`${place}.jpg`)), truth: JSON.parse(await readFile(`${place}.json`, 'utf8')) as PhantomTruth });
  }
}

/** The renderer as it stands: a change anywhere in it makes every kept photo another's. */
const RENDERER = import.meta.dirname;
const renderer = createHash('sha256');
for (const name of readdirSync(RENDERER, { recursive: true, encoding: 'utf8' }).filter((one) => one.endsWith('.ts')).sort()) renderer.update(name).update(readFileSync(path.join(RENDERER, name)));
const RENDERER_HASH = renderer.digest('hex');

const placeOf = (spec: PhantomSpec): string => path.join(FOLDER, createHash('sha256').update(`${RENDERER_HASH} ${JSON.stringify(spec)}`).digest('hex').slice(0, 24));

async function writeWhole(file: string, content: Uint8Array | string): Promise<void> {
  await writeFile(`${file}.${process.pid}`, content);
  await rename(`${file}.${process.pid}`, file);
}
