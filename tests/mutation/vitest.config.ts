/**
 * The tests that judge mutants: those of the three folders, or of the ones that MUTATED names. Statistical ones of many seconds
 * are left out: every mutant would run them.
 */
import { mergeConfig } from 'vitest/config';
import usual from '../../vitest.config';

const FOLDERS = process.env.MUTATED?.split(',') ?? ['decide', 'measure', 'trend'];
const SLOW = ['tests/properties/{decide,measure}/**', 'tests/known-answers/measure/phantom-truth.test.ts'];

const merged = mergeConfig(usual, { test: { exclude: SLOW } });

export default {
  ...merged,
  test: { ...merged.test, include: FOLDERS.flatMap((folder) => ['unit', 'known-answers', 'properties'].map((kind) => `tests/${kind}/${folder}/**/*.test.ts`)) },
};
