import { parseArgs } from 'node:util';
import { PAPER_SIZES, type Paper } from '../card/sheet-layout';
import { parseSerial, type Serial } from '../card/serial';

/** What a person asked the card command for. */
export interface CardRequest {
  readonly pdf: { readonly path: string; readonly paper: Paper } | null;
  readonly png: { readonly path: string; readonly pxPerMm: number } | null;
  readonly svgPath: string | null;
  readonly geometryPath: string | null;
  /** Null: a new one is drawn. */
  readonly serial: Serial | null;
}

export const CARD_HELP = `Makes a calibration card to print, and what a program needs to know about it.

  npm run -s card -- --paper a4 --out card.pdf

  --paper a4|letter     the paper in the printer
  --out FILE.pdf        the sheet to print, at 100 %
  --serial SERIAL       print this serial again; a new one is drawn when left out
  --png FILE.png        the face of the card alone, notch not cut out
  --px-per-mm NUMBER    resolution of the PNG, 2 to 60; 20 when left out
  --svg FILE.svg        the face of the card alone, as vectors of true size
  --geometry FILE.json  where everything on the card lies, in millimetres
  --help                this text

Prints the serial of the card.
`;

const OPTIONS = {
  paper: { type: 'string' },
  out: { type: 'string' },
  serial: { type: 'string' },
  png: { type: 'string' },
  'px-per-mm': { type: 'string' },
  svg: { type: 'string' },
  geometry: { type: 'string' },
  help: { type: 'boolean' },
} as const;

const DEFAULT_PX_PER_MM = 20;
/** Below 2 a marker's module is a smear; 60 is a picture of 17 megapixels. */
const [COARSEST_PX_PER_MM, FINEST_PX_PER_MM] = [2, 60];

/** A sentence for the person who typed the command. */
export class WrongUse extends Error {}

function read(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS, allowPositionals: false }).values;
  } catch (error) {
    throw new WrongUse(`${(error as Error).message.split('. ')[0].replace(/\.?$/, '.')} Use --help to see what there is.`);
  }
}

function readResolution(text: string | undefined): number {
  if (text === undefined) return DEFAULT_PX_PER_MM;
  const pxPerMm = Number(text);
  if (text.trim() !== '' && pxPerMm >= COARSEST_PX_PER_MM && pxPerMm <= FINEST_PX_PER_MM) return pxPerMm;
  throw new WrongUse(`--px-per-mm must be a number from ${COARSEST_PX_PER_MM} to ${FINEST_PX_PER_MM}, received "${text}".`);
}

function readPaper(text: string | undefined): Paper {
  if (text !== undefined && Object.hasOwn(PAPER_SIZES, text)) return text as Paper;
  const received = text === undefined ? 'it is missing' : `received "${text}"`;
  throw new WrongUse(`--paper must be a4 or letter, the paper in the printer: ${received}.`);
}

function readSerial(text: string | undefined): Serial | null {
  if (text === undefined) return null;
  const reading = parseSerial(text);
  if ('problem' in reading) throw new WrongUse(`--serial: ${reading.problem}`);
  return reading.serial;
}

/** Reads the command line; null when help was asked for. Throws `WrongUse` with one sentence. */
export function readCardRequest(args: readonly string[]): CardRequest | null {
  const values = read(args);
  if (values.help) return null;
  const paths = [values.out, values.png, values.svg, values.geometry].filter((path) => path !== undefined);
  if (paths.length === 0) throw new WrongUse('Nothing to make: give --out card.pdf with --paper a4 or letter, or see --help.');
  if (paths.includes('')) throw new WrongUse('A file name is empty: give every output a name, such as --out card.pdf.');
  if (new Set(paths).size < paths.length) throw new WrongUse('Two outputs have the same file name: give each its own.');
  if (values.out === undefined && values.paper !== undefined) throw new WrongUse('--paper needs --out FILE.pdf: name the sheet to print.');
  if (values.png === undefined && values['px-per-mm'] !== undefined) throw new WrongUse('--px-per-mm needs --png FILE.png: name the picture.');
  return {
    pdf: values.out === undefined ? null : { path: values.out, paper: readPaper(values.paper) },
    png: values.png === undefined ? null : { path: values.png, pxPerMm: readResolution(values['px-per-mm']) },
    svgPath: values.svg ?? null,
    geometryPath: values.geometry ?? null,
    serial: readSerial(values.serial),
  };
}
