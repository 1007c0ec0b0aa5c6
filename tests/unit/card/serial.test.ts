import { describe, expect, it } from 'vitest';
import { mintSerial } from '../../../lib/card/mint-serial';
import { SERIAL_ALPHABET, cardCode, parseCardCode, parseSerial, showSerial } from '../../../lib/card/serial';
import { SAMPLE_SERIAL } from './sample-drawing';

describe('the serial of a card', () => {
  it('is refused when any one symbol is changed', () => {
    for (let place = 0; place < SAMPLE_SERIAL.length; place++) {
      for (const symbol of SERIAL_ALPHABET.replace(SAMPLE_SERIAL[place], '')) {
        const slipped = SAMPLE_SERIAL.slice(0, place) + symbol + SAMPLE_SERIAL.slice(place + 1);
        expect(parseSerial(slipped), slipped).toHaveProperty('problem');
      }
    }
  });

  it('is refused when two different neighbours are swapped', () => {
    for (let place = 0; place + 1 < SAMPLE_SERIAL.length; place++) {
      const [a, b] = [SAMPLE_SERIAL[place], SAMPLE_SERIAL[place + 1]];
      if (a === b) continue;
      expect(parseSerial(SAMPLE_SERIAL.slice(0, place) + b + a + SAMPLE_SERIAL.slice(place + 2))).toHaveProperty('problem');
    }
  });

  it('is read back from how it is shown, in any case and with blanks', () => {
    expect(showSerial(SAMPLE_SERIAL)).toBe('7K3QM-2XPAV-C');
    expect(parseSerial(` ${showSerial(SAMPLE_SERIAL).toLowerCase()} `)).toEqual({ serial: SAMPLE_SERIAL });
  });

  it('is refused with a short sentence when it is empty, too long or has foreign signs', () => {
    expect(parseSerial('')).toEqual({ problem: expect.stringContaining('received 0') });
    expect(parseSerial('A'.repeat(100_000))).toEqual({ problem: expect.stringMatching(/^.{1,160}$/) });
    expect(parseSerial('7K3QM-2XPAV-$')).toEqual({ problem: expect.stringContaining('"$"') });
    expect(parseSerial('<b>K3QM2XPAVC')).toHaveProperty('problem');
  });

  it('is minted from the numbers that are drawn, and drawn again where the check would be a sign', () => {
    expect(mintSerial(() => 0)).toBe('00000000000');
    // 0000000010 is the number 32, whose check value is 32: the sign *. The second draw is used.
    const draws = [0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7];
    expect(mintSerial(() => draws.shift() ?? 0)).toBe('00000000077');
  });

  it('is read from the text of the QR code together with the version', () => {
    expect(cardCode(SAMPLE_SERIAL)).toBe('FW1:7K3QM2XPAVC');
    expect(parseCardCode(cardCode(SAMPLE_SERIAL))).toEqual({ version: 'FW1', serial: SAMPLE_SERIAL });
    expect(parseCardCode('FW12:7K3QM2XPAVC')).toMatchObject({ version: 'FW12' });
    for (const text of ['', 'https://example.org', 'FW1:', 'FW1:7K3QM2XPAVD', 'fw1:7K3QM2XPAVC', 'FW1:7K3QM2XPAVC\n']) {
      expect(parseCardCode(text), JSON.stringify(text)).toHaveProperty('problem');
    }
  });
});
