import { describe, expect, it } from 'vitest';
import { IMPORT_ALLOWLIST, importBreach } from './import-rule';
import { readImports } from './read-imports';
import { codeFiles, readText } from './source-tree';

const BAD: readonly (readonly [from: string, specifier: string])[] = [
  ['lib/card/serial.ts', '../measure/line-length'],
  ['lib/photo/reasons.ts', '../rectify/pose'],
  ['lib/measure/line-length.ts', '../edges/decode/encode-png'],
  ['lib/measure/line-length.ts', '../pipeline/ports'],
  ['lib/trend/robust-slope.ts', '../care/episode'],
  ['lib/trend/robust-slope.ts', '@/lib/decide/rule-book'],
  ['lib/units.ts', './result'],
  ['lib/units.ts', './photo/reasons'],
  ['lib/pipeline/analyse-photo.ts', '../edges/vision/open-cv'],
  ['lib/pipeline/analyse-photo.ts', '../report/overlay-svg'],
  ['lib/edges/db/cases.ts', '../../server/load-case'],
  ['lib/edges/infer/tissue-model.ts', '../../pipeline/analyse-photo'],
  ['lib/report/overlay-svg.ts', '../edges/paper/sheet-pdf'],
  ['lib/server/load-case.ts', '../commands/measure'],
  ['lib/server/load-case.ts', '../../app/page'],
  ['lib/commands/measure.ts', '../../tests/shared-data'],
  ['lib/commands/measure.ts', '../../app/page'],
  ['app/page.tsx', '../lib/edges/db/cases'],
  ['app/page.tsx', '@/lib/measure/line-length'],
  ['app/page.tsx', '../prisma/client'],
  ['app/_components/button.tsx', '../../lib/edges/env/settings'],
  ['lib/toolbox/anything.ts', '../units'],
];

const GOOD: readonly (readonly [from: string, specifier: string])[] = [
  ['lib/result.ts', './units'],
  ['lib/photo/reasons.ts', '../result'],
  ['lib/measure/line-length.ts', '../rectify/millimetre-map'],
  ['lib/measure/line-length.ts', './constants'],
  ['lib/pipeline/analyse-photo.ts', '../review/queue-order'],
  ['lib/edges/vision/open-cv.ts', '../../rectify/found-fiducial'],
  ['lib/edges/infer/tissue-model.ts', '../../pipeline/ports'],
  ['lib/server/load-case.ts', '../edges/db/cases'],
  ['lib/commands/measure.ts', '../server/load-case'],
  ['app/page.tsx', '../lib/server/load-case'],
  ['app/page.tsx', './_components/button'],
  ['lib/card/serial.ts', 'zod'],
  ['tests/unit/card/serial.test.ts', '../../../lib/edges/decode/encode-png'],
];

/** Breaches of the rule, as `importer → imported` with a reason. */
function breachesOf(file: string, text: string): string[] {
  return readImports(file, text).flatMap((specifier) => importBreach(file, specifier) ?? []);
}

describe('the import rule', () => {
  it.each(BAD)('catches that %s imports %s', (from, specifier) => {
    expect(importBreach(from, specifier)).toContain(from);
  });

  it.each(GOOD)('lets %s import %s', (from, specifier) => {
    expect(importBreach(from, specifier)).toBeNull();
  });

  it.each([
    "import { a } from '../decide/rule-book';",
    "import type { A } from '../decide/rule-book';",
    "import '../decide/rule-book';",
    "export * from '../decide/rule-book';",
    "export { a } from '../decide/rule-book';",
    "export type { A } from '../decide/rule-book';",
    "const late = await import('../decide/rule-book');",
    "type Late = typeof import('../decide/rule-book');",
    "type Late = import('../decide/rule-book').A;",
    "import old = require('../decide/rule-book');",
    "const old = require('../decide/rule-book');",
    "new Worker(new URL('../decide/rule-book', import.meta.url));",
    'const late = import(`../decide/rule-book`);',
  ])('sees the module that is named by: %s', (planted) => {
    expect(breachesOf('lib/photo/planted.ts', planted)).toHaveLength(1);
  });

  it('does not take a module named in a comment or a text for an import', () => {
    const planted = "// import '../decide/rule-book'\nexport const text = \"import '../decide/rule-book'\";";
    expect(breachesOf('lib/photo/planted.ts', planted)).toEqual([]);
  });
});

describe('the tree', () => {
  const files = [...codeFiles('lib'), ...codeFiles().filter((file) => file.startsWith('app/'))];
  const breaches = files.flatMap((file) => breachesOf(file, readText(file)));
  const tolerated = (breach: string, pair: string) => breach.startsWith(`${pair}:`);

  it('imports only what lies earlier on the journey', () => {
    expect(breaches.filter((breach) => !IMPORT_ALLOWLIST.some((pair) => tolerated(breach, pair)))).toEqual([]);
  });

  it('still needs each line of the allowlist', () => {
    expect(IMPORT_ALLOWLIST.filter((pair) => !breaches.some((breach) => tolerated(breach, pair)))).toEqual([]);
  });
});
