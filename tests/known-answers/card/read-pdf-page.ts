import { PDFArray, PDFDocument, PDFName, PDFRawStream, decodePDFRawStream } from 'pdf-lib';

/** What the content of a PDF page really says, read from its decompressed operators and nothing else. */
export interface PagePath {
  /** Operands of the last colour operator: one number is grey, three are red, green, blue. */
  readonly colour: readonly number[];
  /** Points in PDF units (1/72 inch) from the bottom left. */
  readonly subpaths: readonly (readonly (readonly [number, number])[])[];
}

export interface PdfPage {
  readonly mediaBoxPt: readonly number[];
  readonly boxesPt: Readonly<Record<string, readonly number[] | null>>;
  readonly paths: readonly PagePath[];
  readonly operators: ReadonlySet<string>;
  readonly viewerPreferences: string;
}

function contentOf(document: PDFDocument): string {
  const contents = document.getPage(0).node.Contents();
  const streams = contents instanceof PDFArray ? contents.asArray().map((ref) => document.context.lookup(ref)) : [contents];
  // The reader itself wraps the page in "q" and "Q"; only what the file holds is looked at.
  const inFile = streams.filter((stream) => stream instanceof PDFRawStream);
  return inFile.map((stream) => Buffer.from(decodePDFRawStream(stream).decode()).toString('latin1')).join('\n');
}

function pathsIn(content: string): Pick<PdfPage, 'paths' | 'operators'> {
  const paths: PagePath[] = [];
  const operators = new Set<string>();
  let operands: number[] = [];
  let colour: number[] = [];
  let subpaths: [number, number][][] = [];
  for (const token of content.split(/\s+/)) {
    if (/^[-+.\d]/.test(token)) {
      operands.push(Number(token));
      continue;
    }
    operators.add(token);
    if (token === 'g' || token === 'rg') colour = operands;
    if (token === 'm') subpaths.push([[operands[0], operands[1]]]);
    if (token === 'l') subpaths[subpaths.length - 1].push([operands[0], operands[1]]);
    if (token === 'f') {
      paths.push({ colour, subpaths });
      subpaths = [];
    }
    operands = [];
  }
  return { paths, operators };
}

export async function readPdfPage(bytes: Uint8Array): Promise<PdfPage> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const { node } = document.getPage(0);
  const numbers = (box: PDFArray | undefined) => (box ? box.asArray().map((n) => Number(n.toString())) : null);
  return {
    mediaBoxPt: numbers(node.MediaBox()) ?? [],
    boxesPt: { crop: numbers(node.CropBox()), trim: numbers(node.TrimBox()) },
    ...pathsIn(contentOf(document)),
    viewerPreferences: String(document.catalog.lookup(PDFName.of('ViewerPreferences'))),
  };
}

/** A PDF unit is 1/72 inch (ISO 32000-1, 8.3.2.3). */
export const MM_PER_PT = 25.4 / 72;

export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly colour: readonly number[];
  readonly subpaths: number;
}

/** How far a path reaches, in millimetres from the bottom left. */
export function extentOf({ colour, subpaths }: PagePath): Extent {
  const across = subpaths.flat().map(([x]) => x * MM_PER_PT);
  const up = subpaths.flat().map(([, y]) => y * MM_PER_PT);
  const [left, right, bottom, top] = [Math.min(...across), Math.max(...across), Math.min(...up), Math.max(...up)];
  return { left, top, width: right - left, height: top - bottom, colour, subpaths: subpaths.length };
}
