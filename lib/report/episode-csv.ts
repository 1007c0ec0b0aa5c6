/** One value of the table. */
export type CsvCell = string | number | null;

/** What programs for tables take as the beginning of a formula. */
const FORMULA = /^[=+\-@\t\r]/;
const LINE_END = '\r\n';

/**
 * A table as comma-separated text (RFC 4180). A text that a table program would run as a formula gets an apostrophe
 * before it; a number never does. Nothing is empty in a cell, never zero.
 *
 * @param header names of the columns
 * @param rows as many cells each as there are columns
 * @returns text with CRLF at the end of each line
 * @throws RangeError where a row has another number of cells
 * @example episodeCsv(['day', 'said'], [[1.5, 'a, "b"'], [null, '=1']]) // 'day,said\r\n1.5,"a, ""b"""\r\n,\'=1\r\n'
 */
export function episodeCsv(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  const wrong = rows.find((row) => row.length !== header.length);
  if (wrong) throw new RangeError(`episodeCsv: ${header.length} cells are needed, received ${wrong.length}`);
  return [header, ...rows].map((row) => row.map(cellText).join(',') + LINE_END).join('');
}

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const safe = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
}
