/**
 * Changes one small thing after another in a folder of `lib` and looks whether its tests notice.
 * `npm run mutate`, or for one folder `npm run mutate -- --mutate lib/trend`. Takes half an hour on two cores; no
 * part of `npm test`. The sources themselves are never touched: a copy in the system's temporary place is.
 */
import os from 'node:os';
import path from 'node:path';

/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutation/vitest.config.ts' },
  mutate: ['lib/decide/**/*.ts', 'lib/measure/**/*.ts', 'lib/trend/**/*.ts'],
  ignorePatterns: ['.next', 'dist', 'public', 'sample-images', 'var', 'lib/segment/weights'],
  tempDirName: path.join(os.tmpdir(), `foldwatch-mutants-${process.pid}`),
  concurrency: 1,
  coverageAnalysis: 'perTest',
  // A constant that is computed while a file is read in is the same in every test: it would be judged by all of them.
  ignoreStatic: true,
  timeoutMS: 20_000,
  reporters: ['clear-text', 'json'],
  clearTextReporter: { allowColor: false, allowEmojis: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: path.join(os.tmpdir(), 'foldwatch-mutation.json') },
  thresholds: { high: 90, low: 85, break: 85 },
};
