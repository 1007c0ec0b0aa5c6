import { describe, expect, it } from 'vitest';
import { exportBreach, mintedBrands, pathBreach } from './name-rule';
import { codeFiles, readText, treeFiles } from './source-tree';

describe('the rule for names', () => {
  it.each([
    'lib/card/OwnCard.ts',
    'lib/card/own_card.ts',
    'lib/Card/own-card.ts',
    'lib/card/utils.ts',
    'lib/card/string-utils.ts',
    'lib/helpers/own-card.ts',
    'tests/unit/card/test-helpers.ts',
    'lib/common/a.ts',
    'lib/card/card-common.ts',
    'lib/card/misc.ts',
    'lib/card/index.ts',
    'app/_components/index.tsx',
    'lib/segment/training/OwnNet.py',
    'sample-images/Photo 1.jpg',
  ])('catches %s', (file) => {
    expect(pathBreach(file)).toContain(file);
  });

  it.each([
    'README.md',
    'LICENSE',
    'package-lock.json',
    'vitest.config.ts',
    '.ci/run',
    '.gitignore',
    'lib/card/aruco-4x4-50.ts',
    'lib/colour/erythema-index.ts',
    'tests/unit/card/serial.test.ts',
    'tests/bench/common-truth.ts',
    'app/(staff)/episodes/[id]/page.tsx',
    'app/_components/button.tsx',
    'prisma/migrations/20260301120000_first/migration.sql',
    'lib/segment/training/own_net.py',
  ])('lets %s be', (file) => {
    expect(pathBreach(file)).toBeNull();
  });

  it('wants a file with functions to export what it is named after', () => {
    expect(exportBreach('lib/rectify/fit-line.ts', 'export function fitPlane() {}')).toContain('fitPlane');
    expect(exportBreach('lib/rectify/fit-line.ts', 'export function fitLine() {}')).toBeNull();
    expect(exportBreach('lib/measure/line-length.ts', 'export const lineLengthMm = () => 1;')).toBeNull();
    expect(exportBreach('lib/measure/toe.ts', 'export interface Toe {}\nexport function cut() {}')).toBeNull();
  });

  it('lets tables, constants and types be named as they like', () => {
    expect(exportBreach('lib/card/constants.ts', 'export const BAR_MM = 50;')).toBeNull();
    expect(exportBreach('lib/card/words.ts', 'export interface Sheet {}\nexport type Page = 1;')).toBeNull();
  });

  it.each(['const wide = 3 as Mm;', 'const wide = 3 as unknown as Px;', 'const all = [3] as Mm2[];', 'const wide = <Days>3;'])(
    'catches a unit minted by assertion: %s',
    (planted) => {
      expect(mintedBrands('lib/card/planted.ts', planted)).toHaveLength(1);
      expect(mintedBrands('lib/units.ts', planted)).toEqual([]);
    },
  );

  it('does not take a type or a call for a minted unit', () => {
    expect(mintedBrands('lib/card/a.ts', "const wide: Mm = mm(3); const name = 'a' as const; // as Mm")).toEqual([]);
  });
});

describe('the tree', () => {
  it('has only names that say something, in kebab-case', () => {
    expect(treeFiles().flatMap((file) => pathBreach(file) ?? [])).toEqual([]);
  });

  it('names each file of lib after its main export', () => {
    expect(codeFiles('lib').flatMap((file) => exportBreach(file, readText(file)) ?? [])).toEqual([]);
  });

  it('mints units in lib/units.ts only', () => {
    expect(codeFiles('lib').flatMap((file) => mintedBrands(file, readText(file)))).toEqual([]);
  });
});
