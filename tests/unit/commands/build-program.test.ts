import { execFile } from 'node:child_process';
import path from 'node:path';
import { promisify } from 'node:util';
import { expect, it } from 'vitest';
import { buildProgram } from '../../../lib/commands/build-program';
import { WORKER_ENVIRONMENT } from '../../../lib/commands/worker-environment';

const PROGRAM = path.join('lib', 'commands', 'measure.ts');
const PHOTOS = [path.join('sample-images', 'measured', 'light-warm-led.jpg'), path.join('sample-images', 'measured', 'dark-daylight.jpg')];
const MOST_BYTES = 16_000_000;

/** What the program writes about the photos; it also ends with 3 where a photo could not be measured. */
async function measured(words: readonly string[], environment: Readonly<Record<string, string>> = {}): Promise<string> {
  const args = [...words, ...PHOTOS, '--bar-mm', '50', '--json', '-'];
  const { stdout } = await promisify(execFile)(process.execPath, args, { env: { ...process.env, ...environment }, maxBuffer: MOST_BYTES }).catch(
    (ended: { code: number; stdout: string }) => ended,
  );
  return stdout;
}

it('gives a program that measures to the same digit as its source, with the weights that lie beside the source', async () => {
  const built = await measured([await buildProgram(PROGRAM)], WORKER_ENVIRONMENT);
  expect(JSON.parse(built)).toMatchObject([{ measured: true }, {}]);
  expect(built).toBe(await measured(['--import', 'tsx', PROGRAM]));
});
