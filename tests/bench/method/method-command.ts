import { spawnSync } from 'node:child_process';
import { copyFile, mkdtemp, readFile, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { METHOD_VERSION } from '../../../lib/pipeline/method-version';

const ROOT = path.resolve(import.meta.dirname, '..', '..', '..');
const FIGURES = path.join(ROOT, 'lib', 'report', 'figures');

/** Which bench writes which file of the method page, and with how many photos. */
const BENCHES: Readonly<Record<string, readonly string[]>> = {
  accuracy: ['accuracy', '1', '--photos', '60'],
  fairness: ['fairness', '1', '--each', '16'],
  outside: ['outside'],
  sensitivity: ['sensitivity'],
};

/**
 * Runs the benches that the method page is made of and keeps their files; nothing on that page is typed by hand.
 * `npm run bench -- method [--only accuracy,fairness]`; half an hour for all of them.
 */
export async function methodCommand(words: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...words], options: { only: { type: 'string' } } });
  const wanted = values.only?.split(',') ?? Object.keys(BENCHES);
  const folder = await mkdtemp(path.join(os.tmpdir(), 'foldwatch-method-'));
  for (const name of wanted) {
    const bench = BENCHES[name];
    if (!bench) throw new Error(`Which figures? ${Object.keys(BENCHES).join(', ')}; received "${name}"`);
    const file = path.join(folder, `${name}.json`);
    const { status } = spawnSync(process.execPath, ['--import', 'tsx', path.join('tests', 'bench', 'bench.ts'), ...bench, '--json', file], { cwd: ROOT, stdio: 'inherit' });
    if (status !== 0) throw new Error(`The bench ${name} ended with ${status}; its old figures stay.`);
    await keep(file, path.join(FIGURES, `${name}.json`));
  }
}

/** With the day and the version it was made by, whichever the bench itself has not written. */
async function keep(file: string, place: string): Promise<void> {
  const figures = JSON.parse(await readFile(file, 'utf8')) as object;
  await writeFile(file, `${JSON.stringify({ madeOn: new Date().toISOString().slice(0, 10), methodVersion: METHOD_VERSION, ...figures }, null, 1)}\n`);
  await copyFile(file, place);
}
