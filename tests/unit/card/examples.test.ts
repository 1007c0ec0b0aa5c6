import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const FOLDER = path.resolve(import.meta.dirname, '..', '..', '..', 'lib', 'card');
const sources = readdirSync(FOLDER).filter((name) => name.endsWith('.ts'));
const examples = sources.flatMap((name) => {
  const text = readFileSync(path.join(FOLDER, name), 'utf8');
  return [...text.matchAll(/@example (.+) \/\/ (.+)/g)].map(([, expression, result]) => ({ name, expression, result }));
});

describe('worked examples in the documentation of the card', () => {
  it('are there for most files', () => {
    expect(examples.length).toBeGreaterThan(25);
  });

  it.each(examples)('$name: $expression is $result', async ({ expression, result }) => {
    const modules = await Promise.all(sources.map((name) => import(path.join(FOLDER, name)) as Promise<Record<string, unknown>>));
    const exported = Object.assign({}, ...modules) as Record<string, unknown>;
    const evaluate = (code: string): unknown => Function(...Object.keys(exported), `return (${code});`)(...Object.values(exported)) as unknown;
    const [value, expected] = [evaluate(expression), evaluate(result)];
    if (typeof expected === 'number') expect(value).toBeCloseTo(expected, 9);
    else expect(value).toEqual(expected);
  });
});
