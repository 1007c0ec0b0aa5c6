/** Display P3 against published colours and against an independent colour library. */
import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { convertDisplayP3ToSrgb, convertPictureP3ToSrgb } from '../../../lib/photo/display-p3';

/**
 * Seen: W3C Web Platform Tests, css/css-color/display-p3-001 (#009900) and -006 (moss green, lch 54% 35 118), six
 * digits; the red primary as in the proposal "HTML canvas: wide gamut and high dynamic range" (W3C ColorWeb community
 * group) after the sample code of CSS Color 4.
 */
const PUBLISHED = [
  { name: 'green', p3: [0.26374, 0.59085, 0.16434], srgb: [0, 0.6, 0], tolerance: 5e-5 },
  { name: 'moss', p3: [0.465377, 0.532768, 0.317713], srgb: [0.448436, 0.53537, 0.288113], tolerance: 2e-6 },
  { name: 'red primary', p3: [1, 0, 0], srgb: [1.0930663624351615, -0.22674197356975417, -0.15013458093711934], tolerance: 1e-9 },
  { name: 'green primary', p3: [0, 1, 0], srgb: [-0.5116049825853448, 1.0182656579378029, -0.3106746212905826], tolerance: 1e-9 },
  { name: 'blue primary', p3: [0, 0, 1], srgb: [0, 0, 1.0420216193529395], tolerance: 1e-9 },
] as const;

describe('Display P3 as sRGB', () => {
  it.each(PUBLISHED)('is the published colour: $name', ({ p3, srgb, tolerance }) => {
    convertDisplayP3ToSrgb([...p3]).forEach((signal, i) => {
      // #009900 is given to five digits of P3, and the sRGB curve is steepest at zero: its zeros scatter most.
      const slack = srgb[i] === 0 && tolerance > 1e-5 ? 1e-3 : tolerance;
      expect(Math.abs(signal - srgb[i])).toBeLessThan(slack);
    });
  });

  it('agrees with culori for a lattice of colours', () => {
    const toRgb = converter('rgb');
    for (let i = 0; i < 1000; i += 1) {
      const p3 = [(i % 10) / 9, (Math.floor(i / 10) % 10) / 9, Math.floor(i / 100) / 9] as const;
      const { r, g, b } = toRgb({ mode: 'p3', r: p3[0], g: p3[1], b: p3[2] });
      // culori rounds its published matrices to 16 digits by way of XYZ; near zero the curve multiplies that by 13.
      convertDisplayP3ToSrgb([...p3]).forEach((signal, k) => expect(signal).toBeCloseTo([r, g, b][k], 6));
    }
  });

  it('is the published red, green and blue at the edge of sRGB, as whole code values', () => {
    const srgb = Uint8Array.of(255, 0, 0, 0, 255, 0, 0, 0, 255, 119, 136, 81);
    expect([...convertPictureP3ToSrgb({ widthPx: 4, heightPx: 1, srgb }).srgb.subarray(0, 9)]).toEqual([255, 0, 0, 0, 255, 0, 0, 0, 255]);
  });
});
