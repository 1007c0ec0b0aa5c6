import { ESLint } from 'eslint';
import { beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from './source-tree';

const eslint = new ESLint({ cwd: ROOT });
/** Files that exist, for rules that ask the compiler; their text is replaced by what is planted. */
const [MEASURE, CARD, EDGE, TEST] = [
  'lib/measure/line-length.ts',
  'lib/card/serial.ts',
  'lib/edges/decode/open-picture.ts',
  'tests/shared-data.ts',
];

/** Rules that a planted text breaks, each once. */
async function broken(file: string, planted: string): Promise<(string | null)[]> {
  const [{ messages }] = await eslint.lintText(planted, { filePath: file });
  return [...new Set(messages.map(({ ruleId, message }) => ruleId ?? message))];
}

const lines = (count: number, line: string) => Array.from({ length: count }, () => line).join('\n');
const longFunction = (count: number) => `export function long(a: number) {\n  let sum = 0;\n${lines(count - 4, '  sum += a;')}\n  return sum;\n}\n`;

/** The compiler reads the whole program once before it answers: a minute and more where two cores are busy. */
const COMPILER_MS = 300_000;

describe('lint', () => {
  beforeAll(async () => {
    await broken(MEASURE, 'export const one = 1;\n');
  }, COMPILER_MS);

  it.each([
    ['a number without a name', '@typescript-eslint/no-magic-numbers', MEASURE, 'export const grow = (a: number) => a * 1.37;\n'],
    ['a function of 41 lines', 'max-lines-per-function', CARD, longFunction(41)],
    ['a file of 151 lines', 'max-lines', CARD, `${lines(151, '// a line')}\n`],
    ['a Lab that hides its white', 'id-denylist', CARD, 'export const lab = 1;\n'],
    ['any', '@typescript-eslint/no-explicit-any', EDGE, 'export const one = (a: any) => String(a);\n'],
    ['a promise nobody waits for', '@typescript-eslint/no-floating-promises', EDGE, 'export function one() {\n  Promise.resolve(1);\n}\n'],
    ['an expectation nobody waits for', '@typescript-eslint/no-floating-promises', TEST, "import { expect, it } from 'vitest';\nit('a', () => {\n  expect(Promise.resolve(1)).resolves.toBe(2);\n});\n"],
    ['chance without a seed', 'no-restricted-properties', TEST, 'export const chance = Math.random();\n'],
    ['an expect without a matcher', 'no-restricted-syntax', TEST, "import { expect, it } from 'vitest';\nit('a', () => {\n  expect(1);\n});\n"],
    ['a test that shuts out the others', 'no-restricted-syntax', TEST, "import { it } from 'vitest';\nit.only('a', () => undefined);\n"],
    ['a skipped test', 'no-restricted-syntax', TEST, "import { it } from 'vitest';\nit.skip('a', () => undefined);\n"],
    ['a skipped group', 'no-restricted-syntax', TEST, "import { describe } from 'vitest';\ndescribe.skip('a', () => undefined);\n"],
    ['a test for later', 'no-restricted-syntax', TEST, "import { it } from 'vitest';\nit.todo('a');\n"],
    ['an empty test', 'no-restricted-syntax', TEST, "import { it } from 'vitest';\nit('a', () => {});\n"],
    ['a snapshot', 'no-restricted-syntax', TEST, "import { expect, it } from 'vitest';\nit('a', () => {\n  expect(1).toMatchInlineSnapshot('1');\n});\n"],
  ])('catches %s', async (_what, rule, file, planted) => {
    expect(await broken(file, planted)).toContain(rule);
  });

  it('catches a matcher that is never called', async () => {
    const planted = "import { expect, it } from 'vitest';\nit('a', () => {\n  expect(1).toBe;\n});\n";
    expect(await broken(TEST, planted)).toEqual(expect.arrayContaining(['no-restricted-syntax', 'no-unused-expressions']));
  });

  it.each([
    ['a function of 40 lines', CARD, longFunction(40)],
    ['a long function in an edge', EDGE, longFunction(60)],
    ['the numbers of arithmetic', MEASURE, 'export const half = (a: number) => (a * 180) / 2;\n'],
    ['a group that is skipped where something is lacking', TEST, "import { describe, expect, it } from 'vitest';\ndescribe.skipIf(false)('a', () => {\n  it('b', () => {\n    expect(1).toBe(1);\n  });\n});\n"],
  ])('lets be %s', async (_what, file, planted) => {
    expect(await broken(file, planted)).toEqual([]);
  });

  it.each([
    ['app/(staff)/review/page.tsx', 'max-lines', 40],
    ['app/api/photos/route.ts', 'max-lines-per-function', 50],
    ['app/(staff)/settings/actions.ts', 'max-lines-per-function', 50],
  ])('keeps %s small', async (file, rule, most) => {
    const { rules } = (await eslint.calculateConfigForFile(file)) as { rules: Record<string, [number, { max: number }]> };
    expect(rules[rule][1].max).toBe(most);
  });
});
