import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { printCohorts } from './print-cohorts';
import { scoreCohorts } from './score-cohorts';

/**
 * The rules on invented courses, nothing stored: `npm run bench -- cohorts [SEED] [--json FILE]`. The same seed gives the
 * same courses on every machine.
 */
export async function cohortsCommand(words: readonly string[]): Promise<void> {
  const { values, positionals } = parseArgs({ args: [...words], options: { json: { type: 'string' } }, allowPositionals: true });
  const seed = Number(positionals[0] ?? 1);
  if (!Number.isInteger(seed)) throw new Error(`A seed is a whole number, received ${positionals[0]}.`);
  const scores = scoreCohorts(seed);
  printCohorts(scores);
  if (values.json) await writeFile(values.json, `${JSON.stringify(scores, null, 1)}\n`);
}
