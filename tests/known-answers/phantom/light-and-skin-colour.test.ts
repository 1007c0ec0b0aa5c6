/**
 * Expected values: white point of D65 and chromaticity of illuminant A for the 2° observer (CIE 15; D65 0.95047, 1.08883;
 * A x 0.4476, y 0.4074, from memory); typology angle from its definition (Chardon 1991); class bounds of the angle > 55,
 * > 41, > 28, > 10, > −30 (Del Bino and Bernerd 2013). The observer is an analytic fit good to about half a per cent.
 */
import { describe, expect, it } from 'vitest';
import { lightSpectrum } from '../../phantom/light/light-spectra';
import { spectrumToXyz } from '../../phantom/skin/cie-observer';
import { itaDeg, reflectanceToLab65 } from '../../phantom/skin/skin-lab65';
import { ITA_RANGE_DEG, itaOfMelanin, melaninForIta, SKIN_CLASSES, skinClassOf } from '../../phantom/skin/skin-class';
import { skinReflectance } from '../../phantom/skin/skin-reflectance';
import { WAVELENGTHS_NM } from '../../phantom/skin/wavelengths';

const white = WAVELENGTHS_NM.map(() => 1);

describe('light and the eye', () => {
  it('sees the white of D65 where the standard puts it', () => {
    const [x, y, z] = spectrumToXyz(white, lightSpectrum('daylight'));
    expect(y).toBe(1);
    expect(Math.abs(x - 0.95047)).toBeLessThan(0.005);
    expect(Math.abs(z - 1.08883)).toBeLessThan(0.006);
  });

  it('sees incandescent light where the standard puts illuminant A', () => {
    const [x, y, z] = spectrumToXyz(white, lightSpectrum('incandescent'));
    expect(Math.abs(x / (x + y + z) - 0.4476)).toBeLessThan(0.004);
    expect(Math.abs(y / (x + y + z) - 0.4074)).toBeLessThan(0.004);
  });

  it('calls the perfect white L 100 and a grey colourless', () => {
    expect(reflectanceToLab65(white).lightness).toBeCloseTo(100, 9);
    const grey = reflectanceToLab65(white.map(() => 0.18));
    expect(grey.lightness).toBeCloseTo(49.496, 2);
    expect(grey.a).toBeCloseTo(0, 9);
    expect(grey.b).toBeCloseTo(0, 9);
  });

  it('reads the typology angle from lightness and yellowness', () => {
    expect(itaDeg({ lightness: 65, a: 9, b: 15 })).toBeCloseTo(45, 9);
    expect(itaDeg({ lightness: 38, a: 9, b: 14 })).toBeCloseTo(-40.6, 1);
  });
});

describe('the six classes of skin', () => {
  it.each(SKIN_CLASSES.map((name) => [name] as const))('reaches %s at both ends of its range', (name) => {
    for (const target of ITA_RANGE_DEG[name]) {
      const reached = itaOfMelanin(melaninForIta(target));
      expect(reached).toBeCloseTo(target, 3);
      expect(skinClassOf(reached)).toBe(name);
    }
  });

  it.each([[56, 'very light'], [55, 'light'], [41, 'intermediate'], [28, 'tan'], [10, 'brown'], [-30, 'dark']] as const)(
    'draws the line at %d degrees as published',
    (angleDeg, name) => expect(skinClassOf(angleDeg)).toBe(name),
  );

  it('turns redder with blood in every class, and least so in the darkest', () => {
    const rise = SKIN_CLASSES.map((name) => {
      const melaninShare = melaninForIta(ITA_RANGE_DEG[name][0]);
      const redness = (bloodShare: number): number => reflectanceToLab65(skinReflectance({ melaninShare, bloodShare, saturation: 0.75 })).a;
      return redness(0.03) - redness(0.005);
    });
    expect(Math.min(...rise)).toBeGreaterThan(1);
    expect(rise.indexOf(Math.min(...rise))).toBe(SKIN_CLASSES.indexOf('dark'));
  });
});
