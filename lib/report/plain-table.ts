/** A table as words, for pages and print alike. The first cell of a row names it. */
export interface PlainTable {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * A share as percent; a dash where there is none.
 *
 * @param share fraction, or null
 * @param digits after the point
 * @example percentText(0.0834) // '8.3 %'
 */
export const percentText = (share: number | null, digits = 1): string => (share === null ? '–' : `${(100 * share).toFixed(digits)} %`);

/**
 * A length; a dash where there is none.
 *
 * @param lengthMm millimetres, or null
 * @example millimetreText(0.27) // '0.27 mm'
 */
export const millimetreText = (lengthMm: number | null): string => (lengthMm === null ? '–' : `${lengthMm.toFixed(2)} mm`);
