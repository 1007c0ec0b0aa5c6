import { CONTENT_WIDTH_MM, PAPER_SIZES, type Paper, type Sheet } from '../card/sheet-layout';
import { moveBox, type SheetBox, sheetText } from './sheet-box';

const MARGIN_MM = 16;
const FOOT_MM = 8;
const FOOT_PT = 7;

export interface PageWords {
  readonly title: string;
  /** Stands at the foot of every page, before its number. */
  readonly foot: string;
}

/**
 * Pieces on as many pages as they need. A heading goes with what follows it; a table that runs on has its head again.
 *
 * @param boxes in order, each as wide as the content
 * @param paper `a4` or `letter`
 * @param words for title and foot
 * @returns pages in order; a piece higher than a page has one of its own and is cut by its edge
 * @example layPages([], 'a4', { title: 'Report', foot: 'HL-101' }).length // 1
 */
export function layPages(boxes: readonly SheetBox[], paper: Paper, { title, foot }: PageWords): Sheet[] {
  const size = PAPER_SIZES[paper];
  const roomMm = size.heightMm - 2 * MARGIN_MM - FOOT_MM;
  const left = (size.widthMm - CONTENT_WIDTH_MM) / 2;
  const pages = fillPages(boxes, roomMm);
  return pages.map((page, at) => {
    let down = MARGIN_MM;
    const placed = page.map((box) => {
      const moved = moveBox(box, left, down);
      down += box.heightMm;
      return moved;
    });
    return {
      ...size,
      title,
      language: 'en',
      shapes: [],
      texts: [...placed.flatMap(({ texts }) => texts), sheetText(`${foot} Page ${at + 1} of ${pages.length}.`, left, size.heightMm - MARGIN_MM, FOOT_PT)],
      strokes: placed.flatMap(({ strokes }) => strokes),
      pictures: placed.flatMap(({ pictures }) => pictures),
    };
  });
}

function fillPages(boxes: readonly SheetBox[], roomMm: number): SheetBox[][] {
  const pages: SheetBox[][] = [[]];
  let used = 0;
  for (const group of keptTogether(boxes)) {
    const heightMm = group.reduce((sum, box) => sum + box.heightMm, 0);
    if (used > 0 && used + heightMm > roomMm) {
      const [first] = group;
      pages.push(first.head ? [first.head] : []);
      used = first.head?.heightMm ?? 0;
    }
    pages[pages.length - 1].push(...group);
    used += heightMm;
  }
  return pages;
}

/** Headings with the first piece under them. */
function keptTogether(boxes: readonly SheetBox[]): SheetBox[][] {
  const groups: SheetBox[][] = [];
  let waiting: SheetBox[] = [];
  for (const box of boxes) {
    waiting.push(box);
    if (box.keepsNext) continue;
    groups.push(waiting);
    waiting = [];
  }
  return waiting.length > 0 ? [...groups, waiting] : groups;
}
