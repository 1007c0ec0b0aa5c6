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
  type PDFOperator,
} from 'pdf-lib';
import type { Srgb } from '../../card/constants';
import type { InkedShape } from '../../card/inked-shape';
import type { Sheet } from '../../card/sheet-layout';

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

/** A sheet as the bytes of a PDF of true size: vectors only, and printing without scaling asked for. */
export async function sheetPdf(sheet: Sheet): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  document.setTitle(sheet.title);
  document.setLanguage('en');
  const preferences = document.catalog.getOrCreateViewerPreferences();
  preferences.setPrintScaling(PrintScaling.None);
  preferences.setPickTrayByPDFSize(true);
  const fonts = {
    regular: await document.embedFont(StandardFonts.Helvetica),
    bold: await document.embedFont(StandardFonts.HelveticaBold),
  };
  const page = document.addPage([sheet.widthMm * POINTS_PER_MM, sheet.heightMm * POINTS_PER_MM]);
  for (const shape of sheet.shapes) page.pushOperators(...operatorsOf(shape, sheet.heightMm));
  for (const line of sheet.texts) {
    page.drawText(line.text, {
      x: line.acrossMm * POINTS_PER_MM,
      y: (sheet.heightMm - line.downMm) * POINTS_PER_MM,
      size: line.sizePt,
      font: fonts[line.weight],
      color: colourOf(line.ink),
    });
  }
  return document.save();
}
