import { describe, expect, it } from 'vitest';
import { CONTENT_WIDTH_MM } from '../../../lib/card/sheet-layout';
import { METHOD_VERSION } from '../../../lib/pipeline/method-version';
import accuracy from '../../../lib/report/figures/accuracy.json';
import fairness from '../../../lib/report/figures/fairness.json';
import outside from '../../../lib/report/figures/outside.json';
import sensitivity from '../../../lib/report/figures/sensitivity.json';
import type { MethodFigures } from '../../../lib/report/method-figures';
import { methodPage } from '../../../lib/report/method-page';
import { methodBlocks } from '../../../lib/server/method-blocks';

const page = methodPage({ accuracy, fairness, outside, sensitivity } as unknown as MethodFigures, METHOD_VERSION);
const blocks = methodBlocks({ ...page, example: null });
const words = blocks.flatMap((block) => ('words' in block ? [block.words] : []));
const tables = blocks.flatMap((block) => (block.kind === 'table' ? [block] : []));

describe('the method in a printed report', () => {
  it('has every table of the method page, row for row, with the run that made it', () => {
    expect(tables.map(({ rows }) => rows)).toEqual([...page.accuracy, page.fairness, page.outside].map(({ rows }) => rows));
    expect(words).toEqual(expect.arrayContaining([...page.madeBy]));
  });

  it('keeps every table between the margins of the page', () => {
    for (const { columns } of tables) {
      const total = columns.reduce((sum, { widthMm }) => sum + widthMm, 0);
      expect(total).toBeCloseTo(CONTENT_WIDTH_MM, 6);
      expect(Math.min(...columns.map(({ widthMm }) => widthMm))).toBeGreaterThan(12);
    }
  });

  it('says so where the example could not be worked out', () => {
    expect(words).toContain('The example could not be worked out on this machine just now.');
  });
});
