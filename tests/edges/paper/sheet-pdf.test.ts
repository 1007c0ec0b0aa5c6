import { PDFDocument, StandardFonts } from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { COLUMN_MM, CONTENT_WIDTH_MM, sheetLayout, type Paper } from '../../../lib/card/sheet-layout';
import { SHEET_WORDS_EN } from '../../../lib/card/sheet-words';
import { SHEET_WORDS_ES } from '../../../lib/card/sheet-words-es';
import { sheetPdf } from '../../../lib/edges/paper/sheet-pdf';
import { sampleDrawing } from '../../unit/card/sample-drawing';
import { readPdfPage, type PagePath, type PdfPage } from './read-pdf-page';

/** A PDF unit is 1/72 inch (ISO 32000-1, 8.3.2.3). */
const MM_PER_PT = 25.4 / 72;
/** The bar of the project's checks for distances in the PDF. */
const EXACT_MM = 0.05;

interface Extent {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly colour: readonly number[];
  readonly subpaths: number;
}

function extentOf({ colour, subpaths }: PagePath): Extent {
  const across = subpaths.flat().map(([x]) => x * MM_PER_PT);
  const up = subpaths.flat().map(([, y]) => y * MM_PER_PT);
  const [left, right, bottom, top] = [Math.min(...across), Math.max(...across), Math.min(...up), Math.max(...up)];
  return { left, top, width: right - left, height: top - bottom, colour, subpaths: subpaths.length };
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < EXACT_MM;
const isBlack = ({ colour }: Extent): boolean => colour.length === 1 && colour[0] === 0;

describe.each<[Paper, number, number]>([
  ['a4', 210, 297], // ISO 216
  ['letter', 215.9, 279.4], // 8.5 × 11 in
])('the printed sheet on %s', (paper, widthMm, heightMm) => {
  let page: PdfPage;
  let extents: Extent[];
  beforeAll(async () => {
    page = await readPdfPage(await sheetPdf(sheetLayout(paper, sampleDrawing())));
    extents = page.paths.map(extentOf);
  });

  it('has a page of exactly that paper and no other box that would crop or scale it', () => {
    expect(page.mediaBoxPt.slice(0, 2)).toEqual([0, 0]);
    expect(page.mediaBoxPt[2] * MM_PER_PT).toBeCloseTo(widthMm, 3);
    expect(page.mediaBoxPt[3] * MM_PER_PT).toBeCloseTo(heightMm, 3);
    expect(page.boxesPt).toEqual({ crop: null, trim: null });
  });

  it('asks the printer not to scale (ISO 32000-1, table 150)', () => {
    expect(page.viewerPreferences).toContain('/PrintScaling /None');
  });

  it('has the eight fiducials as black squares of 9 mm, their centres as far apart as the geometry says', () => {
    const squares = extents.filter((e) => isBlack(e) && near(e.width, 9) && near(e.height, 9) && e.subpaths > 1);
    expect(squares).toHaveLength(8);
    const centres = squares.map((e) => ({ across: e.left + 4.5, down: heightMm - e.top + 4.5 }));
    const first = centres[0];
    const design = OWN_CARD.fiducials.map(({ centre }) => centre);
    centres.forEach((centre, i) => {
      expect(Math.abs(centre.across - first.across - (design[i].acrossMm - design[0].acrossMm))).toBeLessThan(EXACT_MM);
      expect(Math.abs(centre.down - first.down - (design[i].downMm - design[0].downMm))).toBeLessThan(EXACT_MM);
    });
    // Worked by hand from the card's size: corners 7.5 mm in from each edge of 85.60 × 53.98.
    expect(Math.abs(Math.max(...centres.map((c) => c.across)) - Math.min(...centres.map((c) => c.across)) - 70.6)).toBeLessThan(EXACT_MM);
    expect(Math.abs(Math.max(...centres.map((c) => c.down)) - Math.min(...centres.map((c) => c.down)) - 38.98)).toBeLessThan(EXACT_MM);
  });

  it('has one black bar of 50 mm', () => {
    const bars = extents.filter((e) => isBlack(e) && e.subpaths === 1 && e.width > 20);
    expect(bars).toHaveLength(1);
    expect(Math.abs(bars[0].width - 50)).toBeLessThan(EXACT_MM);
  });

  it('has a cut line and a bank-card outline whose middles are ID-1 (85.60 × 53.98 mm)', () => {
    // A line of 0.15 and one of 0.25 mm, half of each to both sides.
    for (const lineMm of [0.15, 0.25]) {
      const outlines = extents.filter((e) => near(e.width, 85.6 + lineMm) && near(e.height, 53.98 + lineMm));
      expect(outlines.length, `line of ${lineMm} mm`).toBeGreaterThanOrEqual(1);
    }
    const both = extents.filter((e) => Math.abs(e.width - 85.6) < 0.3 && Math.abs(e.height - 53.98) < 0.3);
    expect(both).toHaveLength(2);
  });

  it('sends greys and blacks out as grey, so that a printer uses black ink alone', () => {
    const neutralRgb = page.paths.filter(({ colour }) => colour.length === 3 && colour[0] === colour[1] && colour[1] === colour[2]);
    expect(neutralRgb).toEqual([]);
    expect(page.paths.filter(({ colour }) => colour.length === 1).length).toBeGreaterThan(20);
  });

  it('is vectors only: no picture, no transparency, no curve, no page-wide scaling', () => {
    for (const operator of ['Do', 'BI', 'sh', 'c']) expect([...page.operators]).not.toContain(operator);
    expect(page.operators.has('f')).toBe(true);
  });

  it('keeps everything at least 15 mm from the edge of the paper', () => {
    const left = Math.min(...extents.map((e) => e.left));
    const right = Math.max(...extents.map((e) => e.left + e.width));
    const top = Math.max(...extents.map((e) => e.top));
    const bottom = Math.min(...extents.map((e) => e.top - e.height));
    expect(Math.min(left, widthMm - right, heightMm - top, bottom)).toBeGreaterThan(15);
  });

  it.each([SHEET_WORDS_EN, SHEET_WORDS_ES])('keeps every line of text within its column, in $language', async (words) => {
    const document = await PDFDocument.create();
    const fonts = { regular: await document.embedFont(StandardFonts.Helvetica), bold: await document.embedFont(StandardFonts.HelveticaBold) };
    const { texts } = sheetLayout(paper, [], words);
    const left = (widthMm - CONTENT_WIDTH_MM) / 2;
    const tooLong = texts.filter((line) => {
      const lineMm = fonts[line.weight].widthOfTextAtSize(line.text, line.sizePt) * MM_PER_PT;
      return line.acrossMm + lineMm > left + CONTENT_WIDTH_MM;
    });
    expect(texts.some((line) => Math.abs(line.acrossMm - left - COLUMN_MM) < 1e-9)).toBe(true);
    expect(tooLong.map((line) => line.text)).toEqual([]);
  });

  it('says as much in Spanish as in English, line by line where lines lie beside a drawing', () => {
    const [english, spanish] = [SHEET_WORDS_EN, SHEET_WORDS_ES].map((words) => sheetLayout(paper, [], words).texts);
    expect(spanish.length).toBe(english.length);
    expect(Math.max(...spanish.map(({ downMm }) => downMm))).toBe(Math.max(...english.map(({ downMm }) => downMm)));
    const words = spanish.map(({ text }) => text).join(' ');
    for (const needed of ['100 %', 'tarjeta de banco', '50 mm', 'mate', 'plastifique', 'altura de la uña', 'clínica', '112 o 911']) expect(words).toContain(needed);
  });

  it('tells what to do in plain words and claims nothing', () => {
    const words = sheetLayout(paper, []).texts.map((line) => line.text).join(' ');
    for (const needed of ['100 %', 'bank card', '50 mm', 'matt', 'laminate', 'level with the nail', 'clinic', '112 or 911']) expect(words).toContain(needed);
    expect(words).not.toMatch(/\bnormal\b|\bfine\b|all well|healing well|diagnos/i);
  });
});
