import { PDFDocument, StandardFonts } from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { COLUMN_MM, CONTENT_WIDTH_MM, sheetLayout, type Paper } from '../../../lib/card/sheet-layout';
import { type ClinicOnSheet, SHEET_WORDS_EN, type SheetWords } from '../../../lib/card/sheet-words';
import { SHEET_WORDS_ES } from '../../../lib/card/sheet-words-es';
import { sheetPdf } from '../../../lib/edges/paper/sheet-pdf';
import { sampleDrawing } from '../../unit/card/sample-drawing';
import { type Extent, extentOf, MM_PER_PT, type PdfPage, readPdfPage } from '../../known-answers/card/read-pdf-page';

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

  it('says whom to call where the clinic is known, and leaves lines to write on where it is not', () => {
    const last = (words: SheetWords, clinic: ClinicOnSheet | null) => sheetLayout(paper, [], words, clinic).texts.map((line) => line.text).find((line) => /^M(y|i) cl[ií]ni/.test(line)) ?? '';
    const clinic = { name: 'Heron Lane Foot Clinic', phone: '01632 960134' };
    expect(last(SHEET_WORDS_EN, clinic)).toBe('My clinic: Heron Lane Foot Clinic     Telephone: 01632 960134');
    expect(last(SHEET_WORDS_ES, clinic)).toBe('Mi clínica: Heron Lane Foot Clinic     Teléfono: 01632 960134');
    expect(last(SHEET_WORDS_EN, null)).toMatch(/^My clinic: _+ +Telephone: _+$/);
  });

  it('tells what to do in plain words and claims nothing', () => {
    const words = sheetLayout(paper, []).texts.map((line) => line.text).join(' ');
    for (const needed of ['100 %', 'bank card', '50 mm', 'matt', 'laminate', 'level with the nail', 'clinic', '112 or 911']) expect(words).toContain(needed);
    expect(words).not.toMatch(/\bnormal\b|\bfine\b|all well|healing well|diagnos/i);
  });
});
