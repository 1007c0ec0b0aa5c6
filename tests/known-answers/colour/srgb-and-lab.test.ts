import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { LINEAR_TO_XYZ65, WHITE_D65, XYZ65_TO_LINEAR } from '../../../lib/colour/constants';
import { convertLinearToLab65 } from '../../../lib/colour/convert-linear-to-lab65';
import { convertSrgbToLinear } from '../../../lib/colour/convert-srgb-to-linear';
import { differenceCiede2000 } from '../../../lib/colour/difference-ciede2000';
import { decodeSrgb } from '../../../lib/colour/decode-srgb';
import { encodeSrgb } from '../../../lib/colour/encode-srgb';
import { CHART_24 } from './chart-24';

type Codes = readonly [number, number, number];
const linearOf = ([redCode, greenCode, blueCode]: Codes) => convertSrgbToLinear({ redCode, greenCode, blueCode });
const lab65Of = (codes: Codes) => convertLinearToLab65(linearOf(codes));
/** L*a*b* D50 of a reference library, Bradford-adapted: the white point that this project does not use. */
const toLab50 = converter('lab');
const lab50Of = ([r, g, b]: Codes) => toLab50({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
/** On purpose a D50 value where a D65 value belongs: the mistake that these checks would reveal. */
const lab50AsIf65 = (codes: Codes) => {
  const { l, a, b } = lab50Of(codes);
  return { l65: l, a65: a, b65: b };
};

describe('the curve of IEC 61966-2-1', () => {
  it('decodes the published points', () => {
    // 188/255 is the code nearest half of the light; 0.04045 · 255 is where line and power meet.
    expect(decodeSrgb(0)).toBe(0);
    expect(decodeSrgb(255)).toBe(1);
    expect(decodeSrgb(0.04045 * 255)).toBeCloseTo(0.04045 / 12.92, 12);
    expect(Math.round(encodeSrgb(0.5))).toBe(188);
  });

  it('meets itself where the line ends, to the precision the standard gives its constants', () => {
    // The standard rounds its constants: line and power differ by 2.4e-8 of white at the break.
    expect(decodeSrgb(0.0404499 * 255)).toBeCloseTo(decodeSrgb(0.0404501 * 255), 6);
    expect(encodeSrgb(0.0031307999) / 255).toBeCloseTo(encodeSrgb(0.0031308001) / 255, 6);
  });
});

describe('the matrices', () => {
  it('are the four decimals that IEC 61966-2-1 prints', () => {
    const printed = [
      [0.4124, 0.3576, 0.1805],
      [0.2126, 0.7152, 0.0722],
      [0.0193, 0.1192, 0.9505],
    ];
    printed.forEach((row, r) => row.forEach((value, c) => expect(LINEAR_TO_XYZ65[r][c]).toBeCloseTo(value, 4)));
  });

  it('send white to D65 and undo each other', () => {
    LINEAR_TO_XYZ65.forEach((row, r) => {
      expect(row[0] + row[1] + row[2]).toBeCloseTo([WHITE_D65.x65, WHITE_D65.y65, WHITE_D65.z65][r], 14);
      for (const c of [0, 1, 2]) {
        const product = row[0] * XYZ65_TO_LINEAR[0][c] + row[1] * XYZ65_TO_LINEAR[1][c] + row[2] * XYZ65_TO_LINEAR[2][c];
        expect(product).toBeCloseTo(r === c ? 1 : 0, 14);
      }
    });
    // CIE 15:2004 lists the D65 white as 95.047, 100, 108.883; the chromaticities of sRGB are rounded to four decimals.
    expect(WHITE_D65.x65).toBeCloseTo(0.95047, 4);
    expect(WHITE_D65.z65).toBeCloseTo(1.08883, 3);
  });
});

describe('L*a*b* under D65', () => {
  // Values of a public library's test file, two decimals.
  it.each<[string, Codes, readonly [number, number, number]]>([
    ['#ff0000', [255, 0, 0], [53.24, 80.09, 67.2]],
    ['#00ff00', [0, 255, 0], [87.73, -86.18, 83.18]],
    ['#0000ff', [0, 0, 255], [32.3, 79.19, -107.86]],
    ['#ffff00', [255, 255, 0], [97.14, -21.55, 94.48]],
  ])('of %s is the published one', (_hex, codes, [l, a, b]) => {
    const found = lab65Of(codes);
    // Two decimals were published, and their matrix has seven digits: hence 0.01 and not half of it.
    expect(Math.abs(found.l65 - l)).toBeLessThan(0.01);
    expect(Math.abs(found.a65 - a)).toBeLessThan(0.01);
    expect(Math.abs(found.b65 - b)).toBeLessThan(0.01);
  });

  it('of blue has a* 79.19, where D50 has 68.30', () => {
    expect(Math.abs(lab65Of([0, 0, 255]).a65 - 79.19)).toBeLessThan(0.01);
    // The two versions of the D50 white (.96422 and .96430) differ by 0.015 here.
    expect(Math.abs(lab50Of([0, 0, 255]).a - 68.3)).toBeLessThan(0.02);
  });

  it('pins the white point: one pair is ΔE00 18.44 in D65 and 20.94 in D50', () => {
    // #4269d0 and #a463f2, a pair discussed in public because two libraries disagreed: 18.4365 and 20.9405.
    const pair: readonly [Codes, Codes] = [
      [0x42, 0x69, 0xd0],
      [0xa4, 0x63, 0xf2],
    ];
    expect(differenceCiede2000(lab65Of(pair[0]), lab65Of(pair[1]))).toBeCloseTo(18.4365, 3);
    expect(differenceCiede2000(lab50AsIf65(pair[0]), lab50AsIf65(pair[1]))).toBeCloseTo(20.9405, 2);
  });
});

describe('the 24-patch chart', () => {
  it.each(CHART_24)('$name has its L*a*b* D65 and its distance from the D50 table', ({ srgb, lab65, lab50, deltaE00 }) => {
    const found = lab65Of(srgb);
    expect(Math.abs(found.l65 - lab65[0])).toBeLessThan(0.015);
    expect(Math.abs(found.a65 - lab65[1])).toBeLessThan(0.015);
    expect(Math.abs(found.b65 - lab65[2])).toBeLessThan(0.015);
    const distance = differenceCiede2000(lab50AsIf65(srgb), { l65: lab50[0], a65: lab50[1], b65: lab50[2] });
    expect(Math.abs(distance - deltaE00)).toBeLessThan(0.015);
  });
});
