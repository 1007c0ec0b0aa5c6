import { BAR_MM } from './constants';

/** What a person found out about a printed card; both null until they have looked. */
export interface PrintFindings {
  /** What a ruler reads along the bar that was drawn 50 mm long. */
  readonly barReadsMm: number | null;
  /** Did a bank card (ID-1) fit the printed outline? */
  readonly bankCardFits: boolean | null;
}

export interface PrintScale {
  /** True millimetres per drawn millimetre: lengths in the card's frame are multiplied by it, areas by its square. */
  readonly scale: number;
  /** Standard uncertainty of `scale`, relative to it. */
  readonly relativeU: number;
  /** Has one of the two checks been made? */
  readonly confirmed: boolean;
}

export type PrintCheck = PrintScale | { readonly problem: string };

/**
 * Scale uncertainty before and after a check. Both are read as **standard** uncertainties: 3 % is about the spread of
 * "fit to page" prints (93 to 100 %), and 0.5 % is a ruler read to 0.25 mm over 50 mm. Read as half-widths of a
 * rectangle they would shrink by √3, which nothing known about printers justifies.
 */
const UNCHECKED_RELATIVE_U = 0.03;
const CHECKED_RELATIVE_U = 0.005;

/** Beyond these a slip of reading (inches, a wrong line) is likelier than a printer. */
const SHORTEST_BAR_MM = 40;
const LONGEST_BAR_MM = 60;

/** A bank card that fits shows any mistake beyond this: 2 % of 85.6 mm is 1.7 mm of line in view. */
const BANK_CARD_SHOWS = 0.02;

/**
 * The true scale of a printed card, from what a person read or laid on it.
 *
 * @param findings bar reading in mm and the bank-card check; either may be unknown
 * @returns scale, its standard uncertainty and whether it is confirmed; or one sentence where the findings cannot be
 *   used: a reading outside 40 to 60 mm, a bank card that does not fit without a reading to correct by, or two findings
 *   that contradict each other.
 * @example printCheck({ barReadsMm: 47, bankCardFits: null }).scale // 0.94
 */
export function printCheck({ barReadsMm, bankCardFits }: PrintFindings): PrintCheck {
  if (barReadsMm === null) {
    if (bankCardFits === false) {
      return { problem: 'A bank card does not fit the printed outline: measure the 50 mm bar and enter what it reads.' };
    }
    const confirmed = bankCardFits === true;
    return { scale: 1, relativeU: confirmed ? CHECKED_RELATIVE_U : UNCHECKED_RELATIVE_U, confirmed };
  }
  if (!(barReadsMm >= SHORTEST_BAR_MM && barReadsMm <= LONGEST_BAR_MM)) {
    return {
      problem: `The 50 mm bar can read ${SHORTEST_BAR_MM} to ${LONGEST_BAR_MM} mm, received ${barReadsMm}: measure it again, in millimetres.`,
    };
  }
  const scale = barReadsMm / BAR_MM;
  if (bankCardFits === true && Math.abs(scale - 1) > BANK_CARD_SHOWS) {
    return { problem: `A bank card fits the outline but the bar reads ${barReadsMm} mm: both cannot be, look again.` };
  }
  return { scale, relativeU: CHECKED_RELATIVE_U, confirmed: true };
}
