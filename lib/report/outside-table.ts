import type { OutsideFigures } from './method-figures';
import type { PlainTable } from './plain-table';

type Kind = OutsideFigures['tables'][number];

const named = (rows: Kind['rows'], verdict: string): Kind['rows'] => rows.filter((row) => row.verdict === verdict);

/**
 * Pictures that nobody of this project made: one line for each kind.
 *
 * @param figures the bench's own file
 * @example outsideTable({ madeOn: '', methodVersion: '', tables: [] }).columns.length // 5
 */
export function outsideTable({ tables }: OutsideFigures): PlainTable {
  return {
    caption: 'Pictures and files made by others',
    columns: ['What', 'Number', 'Found', 'Refused', 'Wrong'],
    rows: tables.map(({ kind, rows }) => [kind, String(rows.length), ...['found', 'refused', 'wrong'].map((verdict) => String(named(rows, verdict).length))]),
  };
}

/**
 * What the figures of each kind mean, what had to be assumed, and which pictures went wrong.
 *
 * @param figures the bench's own file
 * @returns one paragraph for each kind that has something to say
 * @example outsideNotes({ madeOn: '', methodVersion: '', tables: [] }) // []
 */
export function outsideNotes({ tables }: OutsideFigures): string[] {
  return tables.flatMap(({ kind, figure, facts, assumed, rows }) => {
    const said = Object.entries(facts).map(([name, value]) => `${spaced(name)} ${value ?? '–'}`);
    const wrong = named(rows, 'wrong').map(({ name, figure: one }) => (one === null ? name : `${name} (${one})`));
    const parts = [
      said.length > 0 ? `${figure}: ${said.join(', ')}` : '',
      assumed ? `assumed: ${assumed}` : '',
      wrong.length > 0 ? `wrong: ${wrong.join(', ')}` : '',
    ].filter((part) => part !== '');
    return parts.length > 0 ? [`${kind}. ${parts.join('. ')}.`] : [];
  });
}

/** `medianDice` → `median dice` */
const spaced = (name: string): string => name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
