import { FAINT_INK } from '../card/constants';
import { CONTENT_WIDTH_MM } from '../card/sheet-layout';
import { EMPTY_BOX, moveBox, type SheetBox, sheetStroke, sheetText } from './sheet-box';
import { type WidthOf, wrapWords } from './wrap-words';

/** What a report is written from. */
export type FlowBlock =
  | { readonly kind: 'title' | 'heading' | 'text' | 'small' | 'listed' | 'source'; readonly words: string }
  | { readonly kind: 'table'; readonly columns: readonly { readonly title: string; readonly widthMm: number }[]; readonly rows: readonly (readonly string[])[] }
  /** Drawings side by side, each as wide as `stepMm`. */
  | { readonly kind: 'drawings'; readonly stepMm: number; readonly boxes: readonly SheetBox[] };

const STYLE = {
  title: { sizePt: 18, weight: 'bold', aboveMm: 0, indentMm: 0 },
  heading: { sizePt: 11, weight: 'bold', aboveMm: 3.5, indentMm: 0 },
  text: { sizePt: 9, weight: 'regular', aboveMm: 0.6, indentMm: 0 },
  listed: { sizePt: 9, weight: 'regular', aboveMm: 0.6, indentMm: 3.5 },
  source: { sizePt: 7.5, weight: 'regular', aboveMm: 0.2, indentMm: 3.5 },
  small: { sizePt: 7.5, weight: 'regular', aboveMm: 0.6, indentMm: 0 },
} as const;
const LEADING_PER_PT = 0.43;
const CELL_PT = 7.5;
const CELL_GAP_MM = 1.5;

/**
 * Blocks as pieces that a page takes whole: each paragraph, each row of a table, each row of drawings.
 *
 * @param blocks in the order in which they are read
 * @param widthOf width of a text as it will be printed, mm
 * @returns pieces as wide as the content of a page, from the left edge on
 * @example flowBoxes([{ kind: 'text', words: 'one' }], (text) => text.length)[0].texts[0].text // 'one'
 */
export function flowBoxes(blocks: readonly FlowBlock[], widthOf: WidthOf): SheetBox[] {
  return blocks.flatMap((block) => {
    if (block.kind === 'table') return tableBoxes(block, widthOf);
    if (block.kind === 'drawings') return drawingRows(block);
    return [paragraph(block.kind, block.words, widthOf)];
  });
}

function paragraph(kind: keyof typeof STYLE, words: string, widthOf: WidthOf): SheetBox {
  const { sizePt, weight, aboveMm, indentMm } = STYLE[kind];
  const leading = sizePt * LEADING_PER_PT;
  const lines = wrapWords(words, CONTENT_WIDTH_MM - indentMm, (text) => widthOf(text, sizePt, weight));
  const texts = lines.map((line, at) => sheetText(line, indentMm, aboveMm + (at + 0.8) * leading, sizePt, weight));
  const mark = kind === 'listed' ? [sheetText('–', 0, aboveMm + 0.8 * leading, sizePt)] : [];
  return { ...EMPTY_BOX, heightMm: aboveMm + lines.length * leading, texts: [...mark, ...texts], keepsNext: kind === 'title' || kind === 'heading' };
}

function tableBoxes({ columns, rows }: Extract<FlowBlock, { kind: 'table' }>, widthOf: WidthOf): SheetBox[] {
  const row = (cells: readonly string[], weight: 'regular' | 'bold'): SheetBox => {
    const leading = CELL_PT * LEADING_PER_PT;
    const starts = columns.map((_, at) => columns.slice(0, at).reduce((sum, { widthMm }) => sum + widthMm, 0));
    const wrapped = columns.map(({ widthMm }, at) => wrapWords(cells[at] ?? '', widthMm - CELL_GAP_MM, (text) => widthOf(text, CELL_PT, weight)));
    const heightMm = Math.max(1, ...wrapped.map(({ length }) => length)) * leading + 1.2;
    const texts = wrapped.flatMap((lines, at) => lines.map((line, place) => sheetText(line, starts[at], (place + 0.8) * leading + 0.4, CELL_PT, weight)));
    return { ...EMPTY_BOX, heightMm, texts, strokes: [sheetStroke(`M0 ${heightMm - 0.2}H${CONTENT_WIDTH_MM}`, 0.15, FAINT_INK)] };
  };
  const head = row(columns.map(({ title }) => title), 'bold');
  return [{ ...head, keepsNext: true }, ...rows.map((cells) => ({ ...row(cells, 'regular'), head }))];
}

function drawingRows({ boxes, stepMm }: Extract<FlowBlock, { kind: 'drawings' }>): SheetBox[] {
  const perRow = Math.max(1, Math.floor(CONTENT_WIDTH_MM / stepMm));
  return Array.from({ length: Math.ceil(boxes.length / perRow) }, (_, at) => {
    const placed = boxes.slice(at * perRow, (at + 1) * perRow).map((box, place) => moveBox(box, place * stepMm, 1));
    return {
      heightMm: 2 + Math.max(...placed.map(({ heightMm }) => heightMm)),
      texts: placed.flatMap(({ texts }) => texts),
      strokes: placed.flatMap(({ strokes }) => strokes),
      pictures: placed.flatMap(({ pictures }) => pictures),
    };
  });
}
