import { describe, expect, it } from 'vitest';
import { combineBudget } from '../../../lib/measure/combine-budget';
import { smallestDetectableChange } from '../../../lib/measure/smallest-detectable-change';
import { uOfHalfWidth } from '../../../lib/measure/u-of-half-width';

describe('combining a budget', () => {
  it('adds independent influences in squares, whatever the sign of their sensitivity', () => {
    const { uCombined, terms } = combineBudget([
      { name: 'a', u: 3 },
      { name: 'b', u: 2, sensitivity: -2 },
    ]);
    expect(uCombined).toBe(5);
    expect(terms).toEqual({ a: 3, b: 4 });
  });

  it('has no finite degrees of freedom where every input is known exactly', () => {
    expect(combineBudget([{ name: 'a', u: 1 }]).effectiveDof).toBeNull();
  });

  it('has as many degrees of freedom as a single input', () => {
    expect(combineBudget([{ name: 'a', u: 2, sensitivity: 3, dof: 9 }]).effectiveDof).toBeCloseTo(9, 12);
  });

  it('is zero without influences', () => {
    expect(combineBudget([])).toEqual({ terms: {}, uCombined: 0, effectiveDof: null });
  });

  it.each([
    [{ name: 'edge', u: -1 }, 'edge: u must be ≥ 0, received -1'],
    [{ name: 'edge', u: NaN }, 'edge: u must be ≥ 0, received NaN'],
    [{ name: 'edge', u: 1, sensitivity: Infinity }, 'edge: sensitivity must be finite, received Infinity'],
    [{ name: 'edge', u: 1, dof: 0 }, 'edge: dof must be > 0, received 0'],
  ])('refuses %o by name', (term, message) => {
    expect(() => combineBudget([term])).toThrow(message);
  });

  it('refuses two terms of one name, since one would hide the other', () => {
    expect(() => combineBudget([{ name: 'a', u: 1 }, { name: 'a', u: 1 }])).toThrow('two terms are named a');
  });
});

describe('limits turned into standard uncertainties', () => {
  it('divides by √3, √6 and √2 (JCGM 100, 4.3.7, 4.3.9, H.1.3.4)', () => {
    expect(uOfHalfWidth(3, 'rectangular')).toBeCloseTo(Math.sqrt(3), 12);
    expect(uOfHalfWidth(6, 'triangular')).toBeCloseTo(Math.sqrt(6), 12);
    expect(uOfHalfWidth(2, 'arcsine')).toBeCloseTo(Math.SQRT2, 12);
    expect(() => uOfHalfWidth(-1, 'arcsine')).toThrow(/received -1/);
  });
});

describe('smallest detectable change', () => {
  it('is 1.96 · √2 · u for two equal uncertainties', () => {
    expect(smallestDetectableChange(1, 1)).toBeCloseTo(1.96 * Math.SQRT2, 12);
    expect(() => smallestDetectableChange(1, -1)).toThrow(/received -1/);
  });
});
