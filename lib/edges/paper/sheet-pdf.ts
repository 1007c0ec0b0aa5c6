import {
  PDFDocument,
  PrintScaling,
  StandardFonts,
  closePath,
  fill,
  grayscale,
  lineTo,
  moveTo,
  rgb,
  setFillingColor,
  type Color,
  LineCapStyle,
  type PDFFont,
  type PDFOperator,
  type PDFPage,
} from 'pdf-lib';
import type { Srgb } from '../../card/constants';
import type { InkedShape } from '../../card/inked-shape';
import type { Sheet, SheetText } from '../../card/sheet-layout';
import type { SheetPicture, SheetStroke } from '../../card/sheet-stroke';

const POINTS_PER_MM = 72 / 25.4;

/** Neutral inks go out as grey, so that a printer lays them down in black alone, without a cast. */
function colourOf([red, green, blue]: Srgb): Color {
  return red === green && green === blue ? grayscale(red / 255) : rgb(red / 255, green / 255, blue / 255);
}

/** One path and one fill per shape: rings that touch leave no seam. */
function operatorsOf(shape: InkedShape, pageHeightMm: number): PDFOperator[] {
  const outlines = shape.rings.flatMap((ring) => [
    ...ring.map((point, place) => {
      const across = point.acrossMm * POINTS_PER_MM;
      const up = (pageHeightMm - point.downMm) * POINTS_PER_MM;
      return place === 0 ? moveTo(across, up) : lineTo(across, up);
    }),
    closePath(),
  ]);
  return [setFillingColor(colourOf(shape.ink)), ...outlines, fill()];
}

/** Signs that the printed face lacks and that can be said with others. */
const SAID_OTHERWISE: Readonly<Record<string, string>> = { '−': '-', '≥': '>=', '≤': '<=', '→': '->', '√': 'root of ', 'Δ': 'delta ', '\u202f': ' ', '\u2009': ' ' };

/** A letter that the printed face lacks becomes a question mark: a name in another script stops no sheet. */
function printable(text: string, font: PDFFont): string {
  const known = new Set(font.getCharacterSet());
  return Array.from(text, (letter) => (known.has(letter.codePointAt(0) ?? 0) ? letter : (SAID_OTHERWISE[letter] ?? '?'))).join('');
}

function drawStroke(page: PDFPage, heightMm: number, { path, acrossMm, downMm, mmPerUnit, penMm, ink, dashesMm, filled = false }: SheetStroke): void {
  // The pen is scaled along with the path.
  const inUnits = (lengthMm: number) => lengthMm / mmPerUnit;
  page.drawSvgPath(path, {
    x: acrossMm * POINTS_PER_MM,
    y: (heightMm - downMm) * POINTS_PER_MM,
    scale: mmPerUnit * POINTS_PER_MM,
    ...(filled ? { color: colourOf(ink) } : { borderColor: colourOf(ink), borderWidth: inUnits(penMm), borderLineCap: LineCapStyle.Round, borderDashArray: dashesMm?.map(inUnits) }),
  });
}

async function drawPicture(document: PDFDocument, page: PDFPage, heightMm: number, { jpeg, acrossMm, downMm, widthMm, heightMm: tallMm }: SheetPicture): Promise<void> {
  page.drawImage(await document.embedJpg(jpeg), {
    x: acrossMm * POINTS_PER_MM,
    y: (heightMm - downMm - tallMm) * POINTS_PER_MM,
    width: widthMm * POINTS_PER_MM,
    height: tallMm * POINTS_PER_MM,
  });
}

/** Sheets as the pages of one PDF of true size: vectors, and photos where a sheet has some; printing without scaling asked for. */
export async function sheetPdf(...sheets: readonly Sheet[]): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  document.setTitle([...new Set(sheets.map(({ title }) => title))].join(', '));
  document.setLanguage(sheets.at(-1)?.language ?? 'en');
  const preferences = document.catalog.getOrCreateViewerPreferences();
  preferences.setPrintScaling(PrintScaling.None);
  preferences.setPickTrayByPDFSize(true);
  const fonts = {
    regular: await document.embedFont(StandardFonts.Helvetica),
    bold: await document.embedFont(StandardFonts.HelveticaBold),
  };
  for (const sheet of sheets) {
    const page = document.addPage([sheet.widthMm * POINTS_PER_MM, sheet.heightMm * POINTS_PER_MM]);
    for (const picture of sheet.pictures ?? []) await drawPicture(document, page, sheet.heightMm, picture);
    for (const shape of sheet.shapes) page.pushOperators(...operatorsOf(shape, sheet.heightMm));
    for (const stroke of sheet.strokes ?? []) drawStroke(page, sheet.heightMm, stroke);
    for (const line of sheet.texts) {
      page.drawText(printable(line.text, fonts[line.weight]), {
        x: line.acrossMm * POINTS_PER_MM,
        y: (sheet.heightMm - line.downMm) * POINTS_PER_MM,
        size: line.sizePt,
        font: fonts[line.weight],
        color: colourOf(line.ink),
      });
    }
  }
  return document.save();
}

/** How wide words come out in the printed face: `(await printedWidths())('50 mm', 9, 'regular')`, in mm. */
export async function printedWidths(): Promise<(text: string, sizePt: number, weight: SheetText['weight']) => number> {
  const document = await PDFDocument.create();
  const fonts = { regular: await document.embedFont(StandardFonts.Helvetica), bold: await document.embedFont(StandardFonts.HelveticaBold) };
  return (text, sizePt, weight) => fonts[weight].widthOfTextAtSize(printable(text, fonts[weight]), sizePt) / POINTS_PER_MM;
}
