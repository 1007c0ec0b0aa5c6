import { describe, expect, expectTypeOf, it } from 'vitest';
import { convertLab65ToLinear } from '../../../lib/colour/convert-lab65-to-linear';
import { convertLinearToLab65 } from '../../../lib/colour/convert-linear-to-lab65';
import { convertLinearToSrgb } from '../../../lib/colour/convert-linear-to-srgb';
import { convertSrgbToLinear } from '../../../lib/colour/convert-srgb-to-linear';
import { differenceCiede2000 } from '../../../lib/colour/difference-ciede2000';
import type { Lab50, Lab65, LinearRgb, SrgbU8 } from '../../../lib/colour/encodings';
import { invertMatrix } from '../../../lib/colour/invert-matrix';
import { encodeSrgb } from '../../../lib/colour/encode-srgb';

describe('encodings', () => {
  it('are types that cannot stand in for one another', () => {
    expectTypeOf<SrgbU8>().not.toMatchTypeOf<LinearRgb>();
    expectTypeOf<LinearRgb>().not.toMatchTypeOf<SrgbU8>();
    expectTypeOf<Lab50>().not.toMatchTypeOf<Lab65>();
    expectTypeOf(convertSrgbToLinear).parameter(0).toEqualTypeOf<SrgbU8>();
    // @ts-expect-error linear light is not a code value
    const wrong: Parameters<typeof convertSrgbToLinear>[0] = { red: 1, green: 1, blue: 1 };
    expect(convertSrgbToLinear(wrong).red).toBeNaN();
  });
});

describe('converting every code value', () => {
  it('there and back changes nothing', () => {
    for (let code = 0; code < 256; code += 1) {
      const back = convertLinearToSrgb(convertSrgbToLinear({ redCode: code, greenCode: 255 - code, blueCode: 128 }));
      expect(back.redCode).toBeCloseTo(code, 9);
      expect(back.greenCode).toBeCloseTo(255 - code, 9);
    }
  });

  it('gives a grey neither a* nor b*', () => {
    for (let code = 0; code < 256; code += 15) {
      const lab = convertLinearToLab65(convertSrgbToLinear({ redCode: code, greenCode: code, blueCode: code }));
      expect(Math.abs(lab.a65)).toBeLessThan(1e-12);
      expect(Math.abs(lab.b65)).toBeLessThan(1e-12);
    }
  });
});

describe('a patch that is half black and half white', () => {
  it('is half of the light on average, code 188 and not 128', () => {
    const [black, white] = [0, 255].map((code) => convertSrgbToLinear({ redCode: code, greenCode: code, blueCode: code }));
    const mean = { red: (black.red + white.red) / 2, green: (black.green + white.green) / 2, blue: 0.5 };
    expect(mean.green).toBe(0.5);
    expect(Math.round(convertLinearToSrgb(mean).greenCode)).toBe(188);
  });
});

describe('colours outside the gamut', () => {
  it('are neither clamped nor hidden: a channel is negative, and comes back', () => {
    const vivid: Lab65 = { l65: 60, a65: -100, b65: 40 };
    const linear = convertLab65ToLinear(vivid);
    expect(linear.red).toBeLessThan(0);
    expect(convertLinearToLab65(linear).a65).toBeCloseTo(-100, 9);
    expect(encodeSrgb(-0.2)).toBeCloseTo(-encodeSrgb(0.2), 12);
    expect(encodeSrgb(1.3)).toBeGreaterThan(255);
  });
});

describe('ΔE00', () => {
  it('is exactly 100 from black to white and 0 from a colour to itself', () => {
    const black = { l65: 0, a65: 0, b65: 0 };
    expect(differenceCiede2000(black, { l65: 100, a65: 0, b65: 0 })).toBe(100);
    expect(differenceCiede2000({ l65: 40, a65: 30, b65: 20 }, { l65: 40, a65: 30, b65: 20 })).toBe(0);
  });

  it('refuses what is not a number', () => {
    expect(() => differenceCiede2000({ l65: NaN, a65: 0, b65: 0 }, { l65: 0, a65: 0, b65: 0 })).toThrow(/deltaE.*NaN/);
  });
});

describe('inverting a matrix', () => {
  it('names the rule and the value where there is no inverse', () => {
    expect(() => invertMatrix([[1, 2, 3], [2, 4, 6], [0, 0, 1]])).toThrow(/determinant must not be zero, received 0/);
  });
});
