import { existsSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_CHECKS } from '../known-answers/outside-checks';
import { readText, ROOT } from './source-tree';

const place = (file: string): string => path.posix.join('tests', 'known-answers', file);

describe('what is checked against the outside', () => {
  it.each(OUTSIDE_CHECKS)('$stage: $what stands in $file, with its source beside it', ({ stage, file, says }) => {
    expect(file.split('/')[0]).toBe(stage);
    expect(existsSync(path.join(ROOT, place(file)))).toBe(true);
    expect(readText(place(file))).toContain(says);
  });

  it('is listed for people too, line by line', () => {
    const [, list = ''] = readText('DEVELOPERS.md').split('## What is checked against the outside');
    const lines = list.split('\n## ')[0].split('\n').filter((line) => line.startsWith('| ') && !line.startsWith('| stage'));
    expect(lines).toEqual(OUTSIDE_CHECKS.map(({ stage, what, source, file, tolerance }) => `| ${stage} | ${what} | ${source} | \`${file}\` | ${tolerance} |`));
  });

  it('would notice a source that is not named', () => {
    expect(readText(place('colour/culori.test.ts'))).not.toContain('a source that nobody named');
  });
});
