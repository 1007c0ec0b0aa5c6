import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { exampleTexts } from './docblock-rule';
import { exportedCode } from './exported-code';
import { isPure } from './purity-rule';
import { ROOT, codeFiles, readText } from './source-tree';
import { agrees, freeNames, isValue, onlyExpression, readExample } from './worked-example';

/** Come with the language. */
const LANGUAGE = new Set(
  'undefined NaN Infinity Math Number String Array Object Map Set JSON Uint8Array Uint8ClampedArray Float32Array Float64Array'.split(' '),
);

const modules = codeFiles('lib')
  .filter((file) => isPure(file) && file.endsWith('.ts'))
  .map((file) => ({ file, exported: exportedCode(file, readText(file)) }));

/** Exported names that only one pure module has. */
function homesOfNames(): Map<string, string> {
  const homes = new Map<string, string[]>();
  for (const { file, exported } of modules) for (const { name } of exported) homes.set(name, [...(homes.get(name) ?? []), file]);
  return new Map([...homes].filter(([, files]) => files.length === 1).map(([name, [file]]) => [name, file]));
}

interface Runnable {
  readonly file: string;
  readonly name: string;
  readonly shown: string;
  readonly expression: ts.Expression;
  readonly expected: ts.Expression;
}

/** Null where an example cannot be run: it shows no value, or speaks of things it does not make. */
function runnable(file: string, name: string, shown: string, homes: ReadonlyMap<string, string>): Runnable | null {
  const { expression, expected } = readExample(shown);
  const [left, right] = [onlyExpression(expression), expected === null ? null : onlyExpression(expected)];
  if (left === null || right === null || !isValue(right)) return null;
  const known = freeNames(left).every((used) => used === name || homes.has(used) || LANGUAGE.has(used));
  return known ? { file, name, shown, expression: left, expected: right } : null;
}

async function valueOf({ file, name, expression }: Runnable, homes: ReadonlyMap<string, string>): Promise<unknown> {
  const used = freeNames(expression).filter((one) => one === name || homes.has(one));
  const values = await Promise.all(
    used.map(async (one) => {
      const home = one === name ? file : (homes.get(one) ?? file);
      const loaded = (await import(/* @vite-ignore */ path.join(ROOT, home))) as Record<string, unknown>;
      return loaded[one];
    }),
  );
  const plain = ts.transpile(`(${expression.getText()})`, { target: ts.ScriptTarget.ES2022 }).replace(/;\s*$/, '');
  // The texts are our own docblocks, and running them is the point.
  return (new Function(...used, `return ${plain};`) as (...all: unknown[]) => unknown)(...values);
}

const homes = homesOfNames();
const examples = modules.flatMap(({ file, exported }) =>
  exported.flatMap(({ name, node }) => exampleTexts(node).map((shown) => ({ file, name, shown }))),
);
const runnables = examples.flatMap(({ file, name, shown }) => runnable(file, name, shown, homes) ?? []);

describe('the reader of examples', () => {
  const claim = (actual: unknown, printed: string) => {
    const node = onlyExpression(printed);
    return node !== null && isValue(node) && agrees(actual, node);
  };

  it('compares numbers to the places printed', () => {
    expect(claim(0.70711, '0.7071')).toBe(true);
    expect(claim(0.70721, '0.7071')).toBe(false);
    expect(claim(-3.04, '-3.0')).toBe(true);
    expect(claim(1.2, '1')).toBe(false);
    expect(claim(0.1 + 0.2 + 0.7, '1')).toBe(true);
    expect(claim(1.24e-6, '1.2e-6')).toBe(true);
    expect(claim(1.26e-6, '1.2e-6')).toBe(false);
  });

  it('compares lists and records part by part', () => {
    expect(claim(Float64Array.of(1, 2), '[1, 2]')).toBe(true);
    expect(claim([1, 2, 3], '[1, 2]')).toBe(false);
    expect(claim({ row: 1.04, column: 2 }, '{ row: 1.0, column: 2 }')).toBe(true);
    expect(claim({ row: 1, column: 2 }, '{ row: 1 }')).toBe(false);
    expect(claim(null, 'null')).toBe(true);
    expect(claim(0, 'null')).toBe(false);
    expect(claim('tilt', "'tilt'")).toBe(true);
  });

  it('takes words for words and not for a value', () => {
    expect(claim(1008, '1008 for a photo 4032 pixels wide')).toBe(false);
    expect(readExample('f(1)').expected).toBeNull();
    expect(readExample("f('a//b') // 2")).toEqual({ expression: "f('a//b')", expected: '2' });
  });

  it('knows which names an example takes from outside', () => {
    expect(freeNames(onlyExpression('f((a) => a + B, { c: 1 }).d') as ts.Expression)).toEqual(['f', 'B']);
    expect(runnable('lib/a.ts', 'f', 'f(photo) // 1', new Map())).toBeNull();
    expect(runnable('lib/a.ts', 'f', 'f(1) // 1', new Map())?.name).toBe('f');
  });
});

describe('worked examples', () => {
  it.each(runnables.map((one) => [one.file, one.shown, one] as const))('of %s hold: %s', async (_file, _shown, one) => {
    const actual = await valueOf(one, homes);
    expect(agrees(actual, one.expected), `is ${JSON.stringify(actual)}`).toBe(true);
  });

  it('are run where they can be', () => {
    const share = Math.round((100 * runnables.length) / Math.max(1, examples.length));
    console.info(`worked examples: ${runnables.length} of ${examples.length} run (${share} %), the others name things they do not make`);
    expect(runnables.length).toBeGreaterThan(0);
  });
});
