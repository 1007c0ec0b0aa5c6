import { SERIAL_ALPHABET, SERIAL_SYMBOLS, crockfordCheck, parseSerial, type Serial } from './serial';

/**
 * A new card serial from random numbers.
 *
 * Crockford's check has 37 values and five of them are written with signs such as $ or =, which people misread: such a
 * draw is thrown away, which costs 0.2 of the 50 random bits.
 *
 * @param drawBelow gives an unpredictable whole number from 0 up to, not including, its argument
 * @returns a serial that `parseSerial` accepts.
 * @example mintSerial(() => 0) // '00000000000'
 */
export function mintSerial(drawBelow: (limit: number) => number): Serial {
  for (;;) {
    const draws = Array.from({ length: SERIAL_SYMBOLS }, () => SERIAL_ALPHABET[drawBelow(SERIAL_ALPHABET.length)]);
    const symbols = draws.join('');
    const reading = parseSerial(symbols + (SERIAL_ALPHABET[crockfordCheck(symbols)] ?? ''));
    if ('serial' in reading) return reading.serial;
  }
}
