/** The tests that judge mutants: those of the three folders. Statistical ones of many seconds are left out, every mutant would run them. */
import { mergeConfig } from 'vitest/config';
import usual from '../../vitest.config';

const FOLDERS = ['decide', 'measure', 'trend'];

const merged = mergeConfig(usual, { test: { exclude: ['tests/properties/**', 'tests/known-answers/measure/phantom-truth.test.ts'] } });

export default {
  ...merged,
  test: { ...merged.test, include: FOLDERS.flatMap((folder) => [`tests/unit/${folder}/**/*.test.ts`, `tests/known-answers/${folder}/**/*.test.ts`]) },
};
