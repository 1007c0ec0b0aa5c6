import { drawingSvg } from '../card/drawing-svg';
import { mintSerial } from '../card/mint-serial';
import { OWN_CARD } from '../card/own-card';
import { ownCardDrawing } from '../card/own-card-drawing';
import { rasterDrawing } from '../card/raster-drawing';
import { cardCode, showSerial } from '../card/serial';
import { sheetLayout } from '../card/sheet-layout';
import { writeGeometry } from '../card/write-geometry';
import { encodePng } from '../edges/decode/encode-png';
import { drawBelow } from '../edges/paper/draw-below';
import { qrModules } from '../edges/paper/qr-modules';
import { sheetPdf } from '../edges/paper/sheet-pdf';
import { writeWholeFile } from '../edges/paper/write-whole-file';
import { CARD_HELP, WrongUse, readCardRequest, type CardRequest } from './card-request';

/** Makes everything first and writes it then: a mistake in making leaves no file behind. Returns the serial as printed. */
async function makeCard(request: CardRequest): Promise<string> {
  const serial = request.serial ?? mintSerial(drawBelow);
  const drawing = ownCardDrawing(serial, qrModules(cardCode(serial)));
  const { pdf, png, svgPath, geometryPath } = request;
  const files: [path: string, content: Uint8Array | string][] = [];
  if (pdf) files.push([pdf.path, await sheetPdf(sheetLayout(pdf.paper, drawing))]);
  if (png) files.push([png.path, await encodePng(rasterDrawing(drawing, OWN_CARD, png.pxPerMm), png.pxPerMm)]);
  if (svgPath !== null) files.push([svgPath, drawingSvg(drawing, OWN_CARD)]);
  if (geometryPath !== null) files.push([geometryPath, writeGeometry(OWN_CARD)]);
  for (const [path, content] of files) {
    await writeWholeFile(path, content).catch((error: NodeJS.ErrnoException) => {
      throw new WrongUse(`Cannot write ${path} (${error.code ?? error.message}): name a file in a folder that is there.`);
    });
  }
  return showSerial(serial);
}

try {
  const request = readCardRequest(process.argv.slice(2));
  process.stdout.write(request === null ? CARD_HELP : `${await makeCard(request)}\n`);
} catch (error) {
  if (!(error instanceof WrongUse)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 2;
}
