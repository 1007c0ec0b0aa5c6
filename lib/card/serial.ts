import { CARD_VERSION } from './constants';

/**
 * Crockford's base 32 (D. Crockford, https://www.crockford.com/base32.html): digits and letters without I, L, O, U.
 */
export const SERIAL_ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** Ten symbols of 5 bits: 50 random bits. */
export const SERIAL_SYMBOLS = 10;
/** Crockford's check: the number modulo 37. */
const CHECK_MODULUS = 37;

declare const serialBrand: unique symbol;
/** Ten symbols and their check symbol, upper case, no hyphens. Made by `parseSerial` only. */
export type Serial = string & { readonly [serialBrand]: true };

export type SerialReading = { readonly serial: Serial } | { readonly problem: string };

/**
 * Crockford's check value of some symbols.
 *
 * @param symbols of `SERIAL_ALPHABET`, upper case
 * @returns 0…36; only values below 32 have a plain symbol. Source: Crockford, as above; 1234, written 16J, has the check
 *   symbol D.
 * @example crockfordCheck('16J') // 13
 */
export function crockfordCheck(symbols: string): number {
  return [...symbols].reduce((sum, symbol) => (sum * 32 + SERIAL_ALPHABET.indexOf(symbol)) % CHECK_MODULUS, 0);
}

/**
 * Reads a serial as a person or a QR code gives it.
 *
 * @param text any case; hyphens and spaces are dropped, O is read as 0, I and L as 1 (Crockford)
 * @returns the serial, or one sentence that says what is wrong.
 * @example 'serial' in parseSerial('00000-00000-0') // true
 */
export function parseSerial(text: string): SerialReading {
  const symbols = text.toUpperCase().replace(/[-\s]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1');
  const shown = JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);
  if (symbols.length !== SERIAL_SYMBOLS + 1) {
    return { problem: `A card serial has ${SERIAL_SYMBOLS + 1} letters and digits, received ${symbols.length} in ${shown}.` };
  }
  const foreign = [...symbols].find((symbol) => !SERIAL_ALPHABET.includes(symbol));
  if (foreign !== undefined) return { problem: `A card serial has no ${JSON.stringify(foreign)}, received ${shown}.` };
  if (SERIAL_ALPHABET.indexOf(symbols[SERIAL_SYMBOLS]) !== crockfordCheck(symbols.slice(0, SERIAL_SYMBOLS))) {
    return { problem: `The card serial ${shown} has a slip of the pen: its last letter does not fit the others.` };
  }
  return { serial: symbols as Serial };
}

/**
 * The serial in groups that are easy to read out, as printed on the card.
 *
 * @param serial from `parseSerial` or `mintSerial`
 * @returns groups of five symbols and the check symbol.
 * @example showSerial(mintSerial(() => 0)) // '00000-00000-0'
 */
export function showSerial(serial: Serial): string {
  return `${serial.slice(0, 5)}-${serial.slice(5, 10)}-${serial.slice(10)}`;
}

/**
 * What the QR code of a card says: version and serial, nothing about a person.
 *
 * @param serial from `parseSerial` or `mintSerial`
 * @returns text for the alphanumeric mode of a QR code.
 * @example cardCode(mintSerial(() => 0)) // 'FW1:00000000000'
 */
export const cardCode = (serial: Serial): string => `${CARD_VERSION}:${serial}`;

/**
 * Reads the text of a card's QR code.
 *
 * @param text as decoded from the photo
 * @returns version (as printed, which may be an older card's) and serial, or one sentence that says what is wrong.
 * @example 'serial' in parseCardCode('FW1:00000000000') // true
 */
export function parseCardCode(text: string): { readonly version: string; readonly serial: Serial } | { readonly problem: string } {
  const parts = /^(FW\d{1,3}):([0-9A-Z]+)$/.exec(text);
  if (parts === null) return { problem: 'The QR code in the photo is not that of a calibration card.' };
  const reading = parseSerial(parts[2]);
  return 'problem' in reading ? reading : { version: parts[1], serial: reading.serial };
}
