import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { ARUCO_4X4_50 } from '../../../lib/card/aruco-4x4-50';
import { GREY_STEPS } from '../../../lib/card/own-card-patches';
import { OWN_CARD } from '../../../lib/card/own-card';
import { crockfordCheck, parseSerial, SERIAL_ALPHABET } from '../../../lib/card/serial';
import { PAPER_SIZES } from '../../../lib/card/sheet-layout';
import { codeOfLight } from '../../../lib/card/code-of-light';
import { lightOfCode } from '../../../lib/card/light-of-code';
import { openCv, withOpenCv } from '../../../lib/edges/vision/open-cv';

describe('what standards say', () => {
  it('makes the card as large as a bank card (ISO/IEC 7810:2019, ID-1: 85.60 × 53.98 mm)', () => {
    expect([OWN_CARD.widthMm, OWN_CARD.heightMm]).toEqual([85.6, 53.98]);
  });

  it('knows A4 (ISO 216: 210 × 297 mm) and Letter (8.5 × 11 in: 215.9 × 279.4 mm)', () => {
    expect(PAPER_SIZES.a4).toEqual({ widthMm: 210, heightMm: 297 });
    expect(PAPER_SIZES.letter.widthMm).toBeCloseTo(215.9, 9);
    expect(PAPER_SIZES.letter.heightMm).toBeCloseTo(279.4, 9);
  });

  it('spaces the grey row evenly in CIE lightness, to the rounding of a code value (culori, lab65)', () => {
    const toLab65 = converter('lab65');
    const steps = GREY_STEPS.length - 1;
    GREY_STEPS.forEach((code, step) => {
      const lightness = toLab65({ mode: 'rgb', r: code / 255, g: code / 255, b: code / 255 }).l;
      // Half a code value is at most 0.22 of L* in the dark part of the scale.
      expect(Math.abs(lightness - (100 - (100 * step) / steps))).toBeLessThan(0.25);
    });
  });

  it('writes check symbols as other programs do', () => {
    // Documentation of base32-crockford 0.3.0 (Python): 42 is 1A, with its check symbol 1A5.
    expect(SERIAL_ALPHABET[crockfordCheck('1A')]).toBe('5');
    // Documentation of Encode::Base32::Crockford 2.112990 (Perl): 1234 is 16J, with its check symbol 16JD.
    expect(SERIAL_ALPHABET[crockfordCheck('16J')]).toBe('D');
  });

  it('reads a serial as Crockford says: any case, hyphens, I and L as 1, O as 0', () => {
    // Documentation of base32-crockford: 'La5' is read as '1A5'. Leading zeros do not change the number.
    expect(parseSerial('ooooo-oooLa-5')).toEqual({ serial: '000000001A5' });
  });

  it('turns code values into light as culori does (IEC 61966-2-1)', () => {
    const toLinear = converter('lrgb');
    for (let code = 0; code <= 255; code++) {
      const linear = toLinear({ mode: 'rgb', r: code / 255, g: 0, b: 0 }).r;
      expect(lightOfCode(code)).toBeCloseTo(linear, 6);
      expect(codeOfLight(lightOfCode(code))).toBe(code);
    }
  });
});

describe('the published marker dictionary', () => {
  it('has the same bits in all fifty markers as OpenCV draws', async () => {
    const { cv } = await openCv();
    const drawn = withOpenCv(cv, 'drawing the dictionary', (own) => {
      const dictionary = own(cv.getPredefinedDictionary(cv.DICT_4X4_50));
      const picture = own(new cv.Mat());
      return ARUCO_4X4_50.map((_, id) => {
        dictionary.generateImageMarker(id, 6, picture, 1);
        const inner = [1, 2, 3, 4].flatMap((row) => [1, 2, 3, 4].map((column) => (picture.ucharAt(row, column) > 127 ? 1 : 0)));
        return Number.parseInt(inner.join(''), 2);
      });
    });
    expect(drawn).toHaveLength(50);
    expect(drawn).toEqual([...ARUCO_4X4_50]);
  });
});
