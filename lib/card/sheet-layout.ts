import { bankCardOutline } from './bank-card-outline';
import { FAINT_INK, ID1_HEIGHT_MM, ID1_WIDTH_MM, INK_BLUE, type Srgb } from './constants';
import { dashedLine } from './dashed-line';
import type { InkedShape } from './inked-shape';
import { millimetrePaper } from './millimetre-paper';
import { placeShape } from './place-shape';
import { rectRing } from './rect-ring';
import { sheetFigure } from './sheet-figure';
import type { SheetPicture, SheetStroke } from './sheet-stroke';
import { type ClinicOnSheet, type Paragraph, SHEET_WORDS_EN, type SheetWords } from './sheet-words';
import { strokeOutline } from './stroke-outline';

export interface SheetText {
  readonly text: string;
  readonly acrossMm: number;
  /** Where the letters stand (their base line). */
  readonly downMm: number;
  readonly sizePt: number;
  readonly weight: 'regular' | 'bold';
  readonly ink: Srgb;
}

/** One printed page in millimetres from its top left corner. */
export interface Sheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly title: string;
  /** BCP 47, of the words on it. */
  readonly language?: string;
  readonly shapes: readonly InkedShape[];
  readonly texts: readonly SheetText[];
  /** Lines of a pen. */
  readonly strokes?: readonly SheetStroke[];
  /** Photos; everything else lies upon them. */
  readonly pictures?: readonly SheetPicture[];
}

/** ISO 216 A4, and US Letter (ANSI/ASME Y14.1: 8.5 × 11 inches). */
export const PAPER_SIZES = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 8.5 * 25.4, heightMm: 11 * 25.4 },
} as const;
export type Paper = keyof typeof PAPER_SIZES;

/** Everything keeps this far within the shorter and narrower of both papers, whatever a printer cannot reach. */
export const CONTENT_WIDTH_MM = 170;
const CONTENT_HEIGHT_MM = 238;
const PANEL = { widthMm: 100, heightMm: 60 };
export const COLUMN_MM = 106;
const ROWS_MM = { card: 24, check: 90, lay: 160, caution: 215 };

const BODY_PT = 9;
const HEADING_PT = 10.5;
const LEADING_MM = 4.1;

function text(words: string, acrossMm: number, downMm: number, sizePt = BODY_PT, weight: SheetText['weight'] = 'regular'): SheetText {
  return { text: words, acrossMm, downMm, sizePt, weight, ink: INK_BLUE };
}

/** Paragraphs one below the other; the first heading's base line lies at `downMm`. */
function paragraphs(all: readonly Paragraph[], acrossMm: number, downMm: number): SheetText[] {
  let down = downMm;
  return all.flatMap(({ heading, lines }) => {
    const head = text(heading, acrossMm, down, HEADING_PT, 'bold');
    const body = lines.map((line, place) => text(line, acrossMm, down + (place + 1) * LEADING_MM + 0.8));
    down += (lines.length + 2) * LEADING_MM + 0.8;
    return [head, ...body.filter((line) => line.text !== '')];
  });
}

/** The line to cut along: its middle is the edge of the card. */
function cutLine(): InkedShape {
  const edge = rectRing(0, 0, ID1_WIDTH_MM, ID1_HEIGHT_MM);
  const dashes = dashedLine([...edge, edge[0]], 2, 1);
  return { name: 'cut line', ink: INK_BLUE, rings: dashes.flatMap((dash) => strokeOutline(dash, 0.15)) };
}

function rule(downMm: number): InkedShape {
  return { name: 'rule', ink: FAINT_INK, rings: [rectRing(0, downMm, CONTENT_WIDTH_MM, 0.25)] };
}

function contentTexts(words: SheetWords, clinic: ClinicOnSheet | null): SheetText[] {
  const { figure, caution } = words;
  const figureDown = ROWS_MM.lay + 45;
  return [
    text(words.title, 0, 7, 22, 'bold'),
    text(words.subtitle, 0, 13.6, 10),
    ...paragraphs(words.printAndCut, COLUMN_MM, ROWS_MM.card + 4),
    ...paragraphs(words.check, COLUMN_MM, ROWS_MM.check + 4),
    ...paragraphs(words.lay, COLUMN_MM, ROWS_MM.lay + 4),
    text(figure.above, 14, figureDown, 8),
    text(figure.side, 70, figureDown, 8),
    text(figure.distance, 87, ROWS_MM.lay + 12, 8),
    text(caution.heading, 0, ROWS_MM.caution + 6.4, 9.5, 'bold'),
    ...caution.lines.map((line, place) => text(line, 0, ROWS_MM.caution + 11.4 + place * LEADING_MM, 8.5)),
    text(words.clinicLine(clinic), 0, CONTENT_HEIGHT_MM),
  ];
}

/**
 * The page a card is printed on: the card itself, the bank-card check on millimetre paper, and how to use both.
 *
 * @param paper `a4` or `letter`
 * @param card what `ownCardDrawing` gave
 * @param words of a language; English when left out
 * @param clinic whom to call; lines to write on when left out
 * @returns shapes and texts in the page's frame; the card's own shapes come last and unchanged but for their place.
 * @example sheetLayout('a4', []).widthMm // 210
 */
export function sheetLayout(paper: Paper, card: readonly InkedShape[], words: SheetWords = SHEET_WORDS_EN, clinic: ClinicOnSheet | null = null): Sheet {
  const size = PAPER_SIZES[paper];
  const left = (size.widthMm - CONTENT_WIDTH_MM) / 2;
  const top = (size.heightMm - CONTENT_HEIGHT_MM) / 2;
  const at = (acrossMm: number, downMm: number) => ({ acrossMm: left + acrossMm, downMm: top + downMm });
  const cardAt = at((PANEL.widthMm - ID1_WIDTH_MM) / 2, ROWS_MM.card);
  const outlineAt = at((PANEL.widthMm - ID1_WIDTH_MM) / 2, ROWS_MM.check + (PANEL.heightMm - ID1_HEIGHT_MM) / 2);
  return {
    ...size,
    title: words.title,
    language: words.language,
    shapes: [
      ...[rule(17), rule(ROWS_MM.caution)].map((shape) => placeShape(shape, at(0, 0))),
      placeShape(millimetrePaper(PANEL.widthMm, PANEL.heightMm), at(0, ROWS_MM.check)),
      placeShape(bankCardOutline(), outlineAt),
      ...sheetFigure().map((shape) => placeShape(shape, at(0, ROWS_MM.lay))),
      placeShape(cutLine(), cardAt),
      ...card.map((shape) => placeShape(shape, cardAt)),
    ],
    texts: contentTexts(words, clinic).map((line) => ({ ...line, ...at(line.acrossMm, line.downMm) })),
  };
}
