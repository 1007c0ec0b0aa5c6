/** Published agreement studies: Bland and Altman 1986 (peak flow) and Landa et al. 2014 (wound photos). */
import { describe, expect, it } from 'vitest';
import { blandAltman } from '../../../lib/measure/bland-altman';
import { smallestDetectableChange } from '../../../lib/measure/smallest-detectable-change';

// Lancet 1986;i:307–10, first readings of 17 subjects, litres per minute. From memory; the recomputed statistics
// match the published ones.
const WRIGHT = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
const T975_OF_16 = 2.12;

describe('Bland and Altman 1986, peak flow by two meters', () => {
  const agreement = () => blandAltman(WRIGHT, MINI, 2, T975_OF_16);

  it('finds the published mean difference −2.1 and SD 38.8', () => {
    expect(agreement().bias.value).toBeCloseTo(-2.1, 1);
    expect(agreement().sd).toBeCloseTo(38.8, 1);
  });

  // The paper takes the limits from the rounded −2.1 and 38.8: −79.7 and 75.5. Ours differ by its rounding.
  it('finds the published limits −79.7 and 75.5 within their rounding of 0.1', () => {
    expect(Math.abs(agreement().lowerLimit.value + 79.7)).toBeLessThan(0.1);
    expect(Math.abs(agreement().upperLimit.value - 75.5)).toBeLessThan(0.1);
  });

  it('finds limits −78.1 and 73.9 with the exact factor 1.96', () => {
    const exact = blandAltman(WRIGHT, MINI, 1.96, T975_OF_16);
    expect(exact.lowerLimit.value).toBeCloseTo(-78.097, 2);
    expect(exact.upperLimit.value).toBeCloseTo(73.862, 2);
  });

  it('finds the published intervals: bias −22.0…17.8, limits −114.3…−45.1 and 40.9…110.1, within 0.2', () => {
    const { bias, lowerLimit, upperLimit } = agreement();
    const found = [bias.from, bias.to, lowerLimit.from, lowerLimit.to, upperLimit.from, upperLimit.to];
    const published = [-22.0, 17.8, -114.3, -45.1, 40.9, 110.1];
    found.forEach((value, index) => expect(Math.abs(value - published[index])).toBeLessThan(0.2));
  });

  it('refuses lists that are not pairs', () => {
    expect(() => blandAltman([1, 2, 3], [1, 2], 2, 4.3)).toThrow(/received 3 and 2/);
  });
});

describe('Landa et al. 2014, smallest detectable change of wound photos', () => {
  // Int Wound J 2014 (PMC7949804): standard error of measurement and published change. The SEM is printed with two
  // decimals, so the change can be off by 1.96 · √2 · 0.005 = 0.014.
  const TABLE = [
    { what: 'surface area', sem: 0.1, published: 0.27 },
    { what: 'granulation', sem: 6.88, published: 19.08 },
    { what: 'slough', sem: 7.17, published: 19.87 },
    { what: 'necrosis', sem: 0.35, published: 0.98 },
  ];
  it.each(TABLE)('$what: SEM $sem gives $published', ({ sem, published }) => {
    expect(Math.abs(smallestDetectableChange(sem, sem) - published)).toBeLessThanOrEqual(0.014);
  });
});
