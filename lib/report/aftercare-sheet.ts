import { cellOutlines } from '../card/cell-outlines';
import { BLACK, FAINT_INK, INK_BLUE } from '../card/constants';
import type { InkedShape } from '../card/inked-shape';
import { placeShape } from '../card/place-shape';
import { rectRing } from '../card/rect-ring';
import { CONTENT_WIDTH_MM, PAPER_SIZES, type Paper, type Sheet, type SheetText } from '../card/sheet-layout';
import { aftercareBlocks, momentWords, type SheetBlock } from './aftercare-blocks';
import type { AftercareFacts } from './aftercare-facts';
import { AFTERCARE_EN } from './aftercare-words-en';
import { AFTERCARE_ES } from './aftercare-words-es';
import { type WidthOf, wrapWords } from './wrap-words';

const CONTENT_HEIGHT_MM = 238;
const CODE_MM = 42;
const PAGE_COLUMN_MM = 116;
const COLUMN_MM = 80;
const RIGHT_MM = CONTENT_WIDTH_MM - COLUMN_MM;
const ROWS_MM = { top: 17, page: 25, under: 76, columns: 84, caution: 222 };
/** Largest first: the words of a long plan come out a little smaller. */
const SIZES_PT = [11.5, 11, 10.5, 10, 9.5, 9, 8.5, 8] as const;
const LEADING_PER_PT = 0.45;
const LIST_MARK_MM = 3.5;

type Flowed = { readonly texts: SheetText[]; readonly endMm: number };

const text = (words: string, acrossMm: number, downMm: number, sizePt: number, weight: SheetText['weight'] = 'regular'): SheetText => ({
  text: words,
  acrossMm,
  downMm,
  sizePt,
  weight,
  ink: INK_BLUE,
});

interface Place {
  readonly acrossMm: number;
  readonly downMm: number;
  readonly widthMm: number;
  readonly sizePt: number;
  readonly widthOf: WidthOf;
}

/** Blocks one below the other. */
function flow(blocks: readonly SheetBlock[], { acrossMm, downMm, widthMm, sizePt, widthOf }: Place): Flowed {
  const leading = sizePt * LEADING_PER_PT;
  const texts: SheetText[] = [];
  let down = downMm;
  const write = (line: string, indent: number): void => {
    for (const piece of wrapWords(line, widthMm - indent, (one) => widthOf(one, sizePt, 'regular'))) {
      texts.push(text(piece, acrossMm + indent, down, sizePt));
      down += leading;
    }
    down += leading / 4;
  };
  for (const { heading, lines, listed = [], last = [] } of blocks) {
    texts.push(text(heading, acrossMm, down, sizePt + 2, 'bold'));
    down += leading * 1.35;
    for (const line of lines) write(line, 0);
    for (const line of listed) {
      texts.push(text('–', acrossMm, down, sizePt));
      write(line, LIST_MARK_MM);
    }
    for (const line of last) write(line, 0);
    down += leading * 0.75;
  }
  return { texts, endMm: down };
}

const rule = (downMm: number): InkedShape => ({ name: 'rule', ink: FAINT_INK, rings: [rectRing(0, downMm, CONTENT_WIDTH_MM, 0.25)] });

/** The personal link as a code, with its quiet zone of paper around it. */
function codeShape(code: AftercareFacts['code']): InkedShape {
  const topLeft = { acrossMm: CONTENT_WIDTH_MM - CODE_MM, downMm: ROWS_MM.top + 5 };
  return { name: 'link', ink: BLACK, rings: cellOutlines(code, topLeft, CODE_MM / code.length) };
}

/** The largest letters with which both columns end above the cautions. */
function columns(left: readonly SheetBlock[], right: readonly SheetBlock[], widthOf: WidthOf): SheetText[] {
  for (const sizePt of SIZES_PT) {
    const place = { downMm: ROWS_MM.columns, widthMm: COLUMN_MM, sizePt, widthOf };
    const [one, other] = [flow(left, { ...place, acrossMm: 0 }), flow(right, { ...place, acrossMm: RIGHT_MM })];
    if (Math.max(one.endMm, other.endMm) <= ROWS_MM.caution) return [...one.texts, ...other.texts];
  }
  throw new RangeError(`aftercareSheet: the plan is too long for one page, received ${left.flatMap(({ lines }) => lines).join(' ').length} letters`);
}

/**
 * The aftercare sheet of one person: personal link, plan, bleeding, warning signs, whom to call.
 *
 * @param paper `a4` or `letter`
 * @param facts of the person and the clinic
 * @param widthOf width of a text as it will be printed, mm
 * @returns one page; refuses with a RangeError a plan that fits no page even in small letters
 * @example aftercareSheet('a4', facts, (text) => text.length).title // 'After your toenail operation'
 */
export function aftercareSheet(paper: Paper, facts: AftercareFacts, widthOf: WidthOf): Sheet {
  const words = { en: AFTERCARE_EN, es: AFTERCARE_ES }[facts.language];
  const { page, left, right } = aftercareBlocks(facts, words);
  const size = PAPER_SIZES[paper];
  const origin = { acrossMm: (size.widthMm - CONTENT_WIDTH_MM) / 2, downMm: (size.heightMm - CONTENT_HEIGHT_MM) / 2 };
  const about = words.about(words.toe[facts.foot ?? 'unknown'], momentWords(facts.procedureAt, facts, false), facts.caseCode);
  const texts = [
    text(words.title, 0, 7, 22, 'bold'),
    text(about, 0, 13.6, 10),
    ...flow([page], { acrossMm: 0, downMm: ROWS_MM.page, widthMm: PAGE_COLUMN_MM, sizePt: 11, widthOf }).texts,
    ...columns(left, right, widthOf),
    ...words.caution.map((line, at) => text(line, 0, ROWS_MM.caution + 6 + at * 4.6, 9)),
    text(facts.address, 0, ROWS_MM.under - 2.5, 7.5),
  ];
  return {
    ...size,
    title: words.title,
    language: facts.language,
    shapes: [rule(ROWS_MM.top), codeShape(facts.code), rule(ROWS_MM.under), rule(ROWS_MM.caution)].map((shape) => placeShape(shape, origin)),
    texts: texts.map((line) => ({ ...line, acrossMm: line.acrossMm + origin.acrossMm, downMm: line.downMm + origin.downMm })),
  };
}
