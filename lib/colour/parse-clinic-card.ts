import type { Patch } from '../card/card-geometry';
import type { CardKnowledge } from './card-knowledge';
import { LEAST_CLINIC_GREYS } from './constants';
import { convertLab50ToXyz50 } from './convert-lab50-to-xyz50';
import { convertXyz50ToXyz65 } from './convert-xyz50-to-xyz65';
import { convertXyz65ToLinear } from './convert-xyz65-to-linear';
import type { Lab50, LinearRgb } from './encodings';

/** Why a file of measured patches is not taken: where, which rule, and what stood there. */
export interface ClinicCardRefused {
  readonly refused: string;
  /** 1 = the first line; null where the file as a whole lacks something. */
  readonly line: number | null;
  readonly received: string;
}

const HEADER = 'name,L,a,b';

/**
 * Reads the measured colours of a clinic's own print of the card: CSV with the header `name,L,a,b`, one patch a line,
 * L*a*b* D50 2° as an instrument writes it, decimal points.
 * @param text the file's text
 * @param patches the card's patches; names must be among them
 * @returns what is then known of the card, lights relative to its white patches; or the first thing that is wrong
 * @example parseClinicCard('', []) // { refused: 'the first line must be name,L,a,b', line: 1, received: '' }
 */
export function parseClinicCard(text: string, patches: readonly Patch[]): CardKnowledge | ClinicCardRefused {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  if (lines[0].trim() !== HEADER) return refuse(`the first line must be ${HEADER}`, 1, lines[0]);
  const measured = new Map<string, LinearRgb>();
  for (const [index, line] of lines.entries()) {
    if (index === 0 || line.trim() === '') continue;
    const row = parseRow(line, index + 1, patches);
    if ('refused' in row) return row;
    if (measured.has(row.name)) return refuse('every patch may stand once', index + 1, row.name);
    measured.set(row.name, row.light);
  }
  return relativeToPaper(measured, patches);
}

const refuse = (refused: string, line: number | null, received: string): ClinicCardRefused => ({ refused, line, received });

function parseRow(
  text: string,
  line: number,
  patches: readonly Patch[],
): { name: string; light: LinearRgb } | ClinicCardRefused {
  const fields = text.split(',').map((field) => field.trim());
  if (fields.length !== 4) return refuse('a line needs four fields: name, L, a, b, with decimal points', line, text);
  const [name, ...values] = fields;
  if (!patches.some((patch) => patch.name === name)) return refuse('the name must be a patch of this card', line, name);
  const wrong = values.find((value) => value === '' || !Number.isFinite(Number(value)));
  if (wrong !== undefined) return refuse('L, a and b must be numbers with a decimal point', line, text);
  const [l50, a50, b50] = values.map(Number);
  if (l50 < 0 || l50 > 100) return refuse('L must lie between 0 and 100', line, values[0]);
  if (Math.abs(a50) > 128 || Math.abs(b50) > 128) return refuse('a and b must lie between -128 and 128', line, text);
  return { name, light: lightOf({ l50, a50, b50 }) };
}

const lightOf = (lab50: Lab50): LinearRgb => convertXyz65ToLinear(convertXyz50ToXyz65(convertLab50ToXyz50(lab50)));

function relativeToPaper(
  measured: ReadonlyMap<string, LinearRgb>,
  patches: readonly Patch[],
): CardKnowledge | ClinicCardRefused {
  const of = (kind: Patch['kind']) => patches.filter((patch) => patch.kind === kind && measured.has(patch.name));
  const whites = of('white').flatMap(({ name }) => measured.get(name) ?? []);
  if (whites.length === 0) return refuse('a white patch must be measured', null, 'no white patch');
  const greys = of('grey').length;
  if (greys < LEAST_CLINIC_GREYS) {
    return refuse(`at least ${LEAST_CLINIC_GREYS} grey patches must be measured`, null, `${greys} grey patches`);
  }
  const mean = (channel: keyof LinearRgb) => whites.reduce((sum, light) => sum + light[channel], 0) / whites.length;
  const paper = { red: mean('red'), green: mean('green'), blue: mean('blue') };
  if (!(Math.min(paper.red, paper.green, paper.blue) > 0)) return refuse('white must not be black', null, 'L 0');
  const relative = [...measured].map(([name, { red, green, blue }]): [string, LinearRgb] => [
    name,
    { red: red / paper.red, green: green / paper.green, blue: blue / paper.blue },
  ]);
  return { kind: 'clinic', patches: new Map(relative), paperLight: paper };
}
