/**
 * JCGM 100:2008 ("GUM"), example H.1: calibration of an end gauge, worked through this project's own uncertainty
 * code. Inputs as in the GUM (also in the documentation of GTC, example GUM_H1). t₉₉(16) = 2.92 is from table G.2.
 */
import { describe, expect, it } from 'vitest';
import { combineBudget } from '../../../lib/measure/combine-budget';
import { uOfHalfWidth } from '../../../lib/measure/u-of-half-width';

const STANDARD_NM = 50_000_623;
const EXPANSION_PER_K = 11.5e-6;
const MEAN_TEMPERATURE_K = -0.1;
const T99_OF_16 = 2.92;

const difference = () => combineBudget([
  { name: 'repeated observations', u: 5.8, dof: 24 },
  { name: 'comparator, random', u: 3.9, dof: 5 },
  { name: 'comparator, systematic', u: 6.7, dof: 8 },
]);
const temperature = () => combineBudget([
  { name: 'mean of the bed', u: 0.2 },
  { name: 'cycle', u: uOfHalfWidth(0.5, 'arcsine') },
]);
const gauge = () => combineBudget([
  { name: 'standard', u: 25, dof: 18 },
  { name: 'difference', u: difference().uCombined, dof: difference().effectiveDof ?? Infinity },
  { name: 'expansion of standard', u: uOfHalfWidth(2e-6, 'rectangular'), sensitivity: 0 },
  { name: 'temperature', u: temperature().uCombined, sensitivity: 0 },
  {
    name: 'difference in expansion',
    u: uOfHalfWidth(1e-6, 'rectangular'),
    sensitivity: -STANDARD_NM * MEAN_TEMPERATURE_K,
    dof: 50,
  },
  {
    name: 'difference in temperature',
    u: uOfHalfWidth(0.05, 'rectangular'),
    sensitivity: -STANDARD_NM * EXPANSION_PER_K,
    dof: 2,
  },
]);

describe('GUM H.1, the end gauge', () => {
  it('gives the difference of the gauges 9.7 nm with 25.6 degrees of freedom (25.4 from unrounded inputs)', () => {
    expect(difference().uCombined).toBeCloseTo(9.7, 1);
    expect(Math.abs((difference().effectiveDof ?? 0) - 25.6)).toBeLessThan(0.5);
  });

  it('gives the temperature 0.41 °C', () => {
    expect(temperature().uCombined).toBeCloseTo(0.41, 2);
  });

  it('gives each contribution as printed: 25, 9.7, 0, 0, 2.9 and 16.6 nm', () => {
    const printed = [25, 9.7, 0, 0, 2.9, 16.6];
    Object.values(gauge().terms).forEach((term, index) => expect(term).toBeCloseTo(printed[index], 1));
  });

  it('combines to 31.7 nm with 16 effective degrees of freedom', () => {
    expect(gauge().uCombined).toBeCloseTo(31.66, 2);
    expect(gauge().effectiveDof).toBeCloseTo(16.75, 1);
    expect(Math.floor(gauge().effectiveDof ?? 0)).toBe(16);
  });

  it('expands to 93 nm at 99 %, from the 32 nm that the GUM rounds to', () => {
    expect(Math.round(T99_OF_16 * Math.round(gauge().uCombined))).toBe(93);
  });

  it('grows to 34 nm with the second-order terms of H.1.7', () => {
    const second = combineBudget([
      { name: 'first order', u: gauge().uCombined },
      { name: 'expansion difference · temperature', u: 11.73 },
      { name: 'expansion · temperature difference', u: 1.67 },
    ]);
    expect(Math.round(second.uCombined)).toBe(34);
  });
});
