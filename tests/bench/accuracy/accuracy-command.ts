import { readFile, writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { photosInFolder } from './bench-photos';
import { freshPhantoms } from './fresh-phantoms';
import { printAccuracy } from './print-accuracy';
import { geometryFrom, runAccuracy } from './run-accuracy';
import { ContactSheet } from './contact-sheet';
import { summarise } from './summarise';

const OPTIONS = {
  seed: { type: 'string', default: '1' },
  photos: { type: 'string', default: '60' },
  folder: { type: 'string' },
  geometry: { type: 'string' },
  json: { type: 'string' },
  sheet: { type: 'string' },
} as const;

/**
 * Renders fresh phantoms (or takes a folder of photos with truth files) and judges the whole chain from the JPEG on.
 * `npm run bench -- accuracy [SEED] [--photos 60] [--folder DIR --geometry FILE] [--sheet FILE.png] [--json FILE]`
 */
export async function accuracyCommand(words: readonly string[]): Promise<void> {
  const { values, positionals } = parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  const seed = Number(positionals[0] ?? values.seed);
  const photos = values.folder ? photosInFolder(values.folder) : freshPhantoms(seed, Number(values.photos));
  const geometry = geometryFrom(values.geometry ? await readFile(values.geometry, 'utf8') : null);
  const sheet = values.sheet ? new ContactSheet() : null;
  const scored = await runAccuracy(photos, geometry, async (photo, analysis) => sheet?.add(photo, analysis));
  const summary = { seed: values.folder ? null : seed, folder: values.folder ?? null, ...summarise(scored.map((one) => one.score)) };
  printAccuracy(summary, scored);
  if (values.json) await writeFile(values.json, `${JSON.stringify(summary, null, 1)}\n`);
  if (sheet && values.sheet) await sheet.write(values.sheet);
}
