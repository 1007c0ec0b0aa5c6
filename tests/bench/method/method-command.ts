import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { METHOD_VERSION } from '../../../lib/pipeline/method-version';
import { fairnessCommand } from '../fairness/fairness-command';
import { outsideCommand } from '../outside/outside-command';
import { sensitivityCommand } from '../sensitivity/sensitivity-command';
import { accuracyFigures } from './accuracy-figures';

const FIGURES = path.resolve(import.meta.dirname, '..', '..', '..', 'lib', 'report', 'figures');
const SEED = 1;
const [PHOTOS, EACH] = [60, 16];

/** What each bench writes. */
const BENCHES: Readonly<Record<string, (file: string) => Promise<void>>> = {
  accuracy: async (file) => writeFile(file, JSON.stringify(await accuracyFigures(SEED, PHOTOS))),
  fairness: (file) => fairnessCommand([String(SEED), '--each', String(EACH), '--json', file]),
  outside: (file) => outsideCommand(['--json', file]),
  sensitivity: (file) => sensitivityCommand(['--json', file]),
};

/**
 * Runs the benches that the method page is made of and keeps their files; nothing on that page is typed by hand.
 * `npm run bench -- method [--only accuracy,fairness]`; half an hour for all of them, less where phantoms are kept.
 */
export async function methodCommand(words: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...words], options: { only: { type: 'string' } } });
  const folder = await mkdtemp(path.join(os.tmpdir(), 'foldwatch-method-'));
  for (const name of values.only?.split(',') ?? Object.keys(BENCHES)) {
    if (!(name in BENCHES)) throw new Error(`Which figures? ${Object.keys(BENCHES).join(', ')}; received "${name}"`);
    const file = path.join(folder, `${name}.json`);
    await BENCHES[name](file);
    const made = { madeOn: new Date().toISOString().slice(0, 10), methodVersion: METHOD_VERSION, ...(JSON.parse(await readFile(file, 'utf8')) as object) };
    await writeFile(path.join(FIGURES, `${name}.json`), `${JSON.stringify(made, null, 1)}\n`);
  }
}
