import { existsSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { STAGES } from './import-rule';
import { ROOT, treeFiles } from './source-tree';

/** Stages that hold words and states instead of numbers. */
const WITHOUT_NUMBERS: readonly string[] = ['care', 'review'];

/** Numeric stages whose published values are not there yet. This list may only shrink. */
const AWAITED: readonly string[] = [];

const hasStage = (stage: string) => existsSync(path.join(ROOT, 'lib', stage));
const answers = treeFiles('tests/known-answers').filter((file) => file.endsWith('.test.ts'));
const hasAnswers = (stage: string) => answers.some((file) => file.startsWith(`tests/known-answers/${stage}/`));

it('checks each numeric stage against values from outside the project', () => {
  const numeric = STAGES.filter((stage) => hasStage(stage) && !WITHOUT_NUMBERS.includes(stage) && !AWAITED.includes(stage));
  expect(numeric.filter((stage) => !hasAnswers(stage))).toEqual([]);
});

it('awaits values only for stages that still have none', () => {
  expect(AWAITED.filter(hasAnswers)).toEqual([]);
});
