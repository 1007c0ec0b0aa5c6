/** What standards say of the printed sheet, read back from the file's own operators: paper, bank card, bar and distances. */
import { beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { sheetLayout, type Paper } from '../../../lib/card/sheet-layout';
import { sheetPdf } from '../../../lib/edges/paper/sheet-pdf';
import { sampleDrawing } from '../../unit/card/sample-drawing';
import { type Extent, extentOf, MM_PER_PT, type PdfPage, readPdfPage } from './read-pdf-page';

/** The bar of the project's checks for distances in the PDF. */
const EXACT_MM = 0.05;

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
});
