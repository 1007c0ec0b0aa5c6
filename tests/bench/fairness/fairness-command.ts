import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { analysisPorts } from '../../../lib/edges/analysis-ports';
import { METHOD_VERSION } from '../../../lib/pipeline/method-version';
import { CONTRAST_EI } from '../../fairness/equal-contrast';
import { judgeClasses, MOST_BEHIND, unfairClasses } from '../../fairness/judge-class';

const OPTIONS = { seed: { type: 'string', default: '1' }, each: { type: 'string', default: '20' }, json: { type: 'string' } } as const;

/** Redness of equal contrast in every class of skin. `npm run bench -- fairness [SEED] [--each 20] [--json FILE]` */
export async function fairnessCommand(words: readonly string[]): Promise<void> {
  const { values, positionals } = parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  const seed = Number(positionals[0] ?? values.seed);
  const classes = await judgeClasses(Number(values.each), seed, await analysisPorts());
  const unfair = unfairClasses(classes);
  console.log(`redness of ${CONTRAST_EI} EI in the plateau, seed ${seed}; worst class at most ${100 * MOST_BEHIND} points behind the best`);
  for (const { skinClass, photos, answers, sensitivity, notMissed } of classes) {
    console.log(`  ${skinClass.padEnd(13)} ${photos} photos  found ${percent(sensitivity)}  not missed ${percent(notMissed)}  ${Object.entries(answers).map(([answer, n]) => `${answer} ${n}`).join(', ')}`);
  }
  for (const sentence of unfair) console.log(`  UNFAIR: ${sentence}`);
  if (values.json) await writeFile(values.json, `${JSON.stringify({ madeOn: new Date().toISOString().slice(0, 10), methodVersion: METHOD_VERSION, seed, contrastEi: CONTRAST_EI, mostBehind: MOST_BEHIND, classes, unfair }, null, 1)}\n`);
}

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`.padStart(5);
