import { describe, expect, it } from 'vitest';
import { docblockBreaches } from './docblock-rule';
import { codeFiles, readText } from './source-tree';

const breaches = (planted: string) => docblockBreaches('lib/measure/planted.ts', planted);

describe('the rule for docblocks', () => {
  it('catches a function with none', () => {
    expect(breaches('export function one() { return 1; }')).toHaveLength(2);
    expect(breaches('export const one = () => 1;')).toHaveLength(2);
  });

  it('catches a docblock without a sentence', () => {
    expect(breaches('/** @example one() // 1 */\nexport function one() { return 1; }')).toHaveLength(1);
    expect(breaches('/**\n * one\n * @example one() // 1\n */\nexport function one() { return 1; }')).toHaveLength(1);
  });

  it('catches a docblock without a worked example, or with an empty one', () => {
    expect(breaches('/** The first number. */\nexport function one() { return 1; }')).toHaveLength(1);
    expect(breaches('/**\n * The first number.\n * @example\n */\nexport function one() { return 1; }')).toHaveLength(1);
  });

  it('catches a comment that is no docblock', () => {
    expect(breaches('// The first number. @example one() // 1\nexport function one() { return 1; }')).toHaveLength(2);
  });

  it('lets a sentence with an example be', () => {
    expect(breaches('/**\n * The first number.\n * @example one() // 1\n */\nexport function one() { return 1; }')).toEqual([]);
  });

  it('asks nothing of types, constants, functions that are not exported, and edges', () => {
    expect(breaches('export const ONE = 1;\nexport interface One {}\nfunction one() { return 1; }')).toEqual([]);
    expect(docblockBreaches('lib/edges/decode/planted.ts', 'export function one() { return 1; }')).toEqual([]);
  });
});

describe('the tree', () => {
  it('explains every exported pure function in a sentence and an example', () => {
    expect(codeFiles('lib').flatMap((file) => docblockBreaches(file, readText(file)))).toEqual([]);
  });
});
