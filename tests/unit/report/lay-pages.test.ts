import { describe, expect, it } from 'vitest';
import { type FlowBlock, flowBoxes } from '../../../lib/report/flow-boxes';
import { layPages } from '../../../lib/report/lay-pages';

/** About what the printed face comes to. */
const widthOf = (text: string, sizePt: number) => text.length * sizePt * 0.18;
const pagesOf = (blocks: readonly FlowBlock[]) => layPages(flowBoxes(blocks, widthOf), 'a4', { title: 'Report', foot: 'Case HL-1.' });
const wordsOn = (page: ReturnType<typeof pagesOf>[number]) => page.texts.map(({ text }) => text);
const columns = [{ title: 'Day', widthMm: 20 }, { title: 'Why', widthMm: 100 }];
const rows = Array.from({ length: 150 }, (_, at) => [String(at), 'because it is so']);

describe('a report on pages', () => {
  it('has everything once, in order, within the paper', () => {
    const blocks: FlowBlock[] = Array.from({ length: 120 }, (_, at) => ({ kind: 'text', words: `Line ${at}` }));
    const pages = pagesOf(blocks);
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.flatMap(wordsOn).filter((text) => text.startsWith('Line'))).toEqual(blocks.map((_, at) => `Line ${at}`));
    for (const { texts, heightMm } of pages) expect(Math.max(...texts.map(({ downMm }) => downMm))).toBeLessThan(heightMm - 10);
  });

  it('numbers its pages', () => {
    const pages = pagesOf([{ kind: 'table', columns, rows }]);
    expect(pages.map((page) => wordsOn(page).at(-1))).toEqual(pages.map((_, at) => `Case HL-1. Page ${at + 1} of ${pages.length}.`));
  });

  it('writes the head of a table again where it runs on', () => {
    const pages = pagesOf([{ kind: 'table', columns, rows }]);
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) expect(wordsOn(page).filter((text) => text === 'Why')).toHaveLength(1);
  });

  it('never leaves a heading alone at the foot of a page', () => {
    for (let lines = 55; lines < 80; lines += 1) {
      const filling: FlowBlock[] = Array.from({ length: lines }, () => ({ kind: 'text', words: 'x' }));
      const pages = pagesOf([...filling, { kind: 'heading', words: 'Findings' }, { kind: 'text', words: 'the first' }]);
      const page = pages.find((one) => wordsOn(one).includes('Findings'));
      expect(page && wordsOn(page)).toContain('the first');
    }
  });

  it('keeps each row of drawings whole, side by side', () => {
    const box = { heightMm: 40, texts: [], strokes: [{ path: 'M0 0', acrossMm: 0, downMm: 0, mmPerUnit: 1, penMm: 1, ink: [0, 0, 0] as const }], pictures: [] };
    const [page] = pagesOf([{ kind: 'drawings', stepMm: 85, boxes: [box, box, box] }]);
    expect(page.strokes?.map(({ acrossMm, downMm }) => [acrossMm, downMm])).toEqual([[20, 17], [105, 17], [20, 59]]);
  });
});
