import { describe, expect, it } from 'vitest';
import { erythemaIndex } from '../../../lib/colour/erythema-index';
import { individualTypologyAngle } from '../../../lib/colour/individual-typology-angle';

describe('individual typology angle', () => {
  it('has the values worked out from the published formula', () => {
    // ITA = arctan((L* − 50)/b*), Chardon 1991, for L*, b* as given; the last two are the chart's skin patches.
    expect(individualTypologyAngle({ l65: 65, a65: 12, b65: 15 })?.angleDeg).toBeCloseTo(45, 10);
    expect(individualTypologyAngle({ l65: 38, a65: 12, b65: 14 })?.angleDeg).toBeCloseTo(-40.6, 2);
    expect(individualTypologyAngle({ l65: 65, a65: 12, b65: 15 })?.itaClass).toBe('light');
    expect(individualTypologyAngle({ l65: 38, a65: 12, b65: 14 })?.itaClass).toBe('dark');
    expect(individualTypologyAngle({ l65: 64.66, a65: 19.27, b65: 17.5 })?.angleDeg).toBeCloseTo(39.95, 2);
    expect(individualTypologyAngle({ l65: 37.54, a65: 14.37, b65: 14.92 })?.angleDeg).toBeCloseTo(-39.87, 2);
  });

  it.each([
    [55, 'veryLight', 'light'],
    [41, 'light', 'intermediate'],
    [28, 'intermediate', 'tan'],
    [10, 'tan', 'brown'],
    [-30, 'brown', 'dark'],
  ])('changes its class at %d degrees (Del Bino and Bernerd 2013)', (boundDeg, above, below) => {
    const at = (angleDeg: number) =>
      individualTypologyAngle({ l65: 50 + 10 * Math.tan((angleDeg * Math.PI) / 180), a65: 10, b65: 10 })?.itaClass;
    expect(at(boundDeg + 0.01)).toBe(above);
    expect(at(boundDeg - 0.01)).toBe(below);
  });

  it('refuses a colour that is not yellowish instead of turning the angle over', () => {
    // The plain arctangent gives −71.6° here and would call a light colour dark.
    expect(individualTypologyAngle({ l65: 65, a65: 10, b65: -5 })).toBeNull();
    expect(individualTypologyAngle({ l65: 50, a65: 0, b65: 0 })).toBeNull();
  });

  it('goes to ±90 degrees as yellowness vanishes', () => {
    expect(individualTypologyAngle({ l65: 80, a65: 0, b65: 1e-9 })?.angleDeg).toBeCloseTo(90, 5);
    expect(individualTypologyAngle({ l65: 20, a65: 0, b65: 1e-9 })?.angleDeg).toBeCloseTo(-90, 5);
  });
});

describe('erythema index', () => {
  it('is 100 · log10 2 where red reflects twice as much as green', () => {
    // Diffey 1984: log10(R/G) = 0.30103, here times 100.
    expect(erythemaIndex(0.5, 0.25)).toBeCloseTo(30.103, 3);
  });

  it('does not change when red and green are scaled alike', () => {
    for (const factor of [0.01, 0.3, 1, 7]) {
      expect(erythemaIndex(0.5 * factor, 0.25 * factor)).toBeCloseTo(30.103, 3);
    }
  });

  it('rises by 2.119 when red is read 5 % too bright', () => {
    expect(erythemaIndex(0.5 * 1.05, 0.25) - erythemaIndex(0.5, 0.25)).toBeCloseTo(2.119, 3);
  });

  it('has no value where there is no light', () => {
    expect(erythemaIndex(0, 0.2)).toBeNaN();
    expect(erythemaIndex(0.2, 0)).toBeNaN();
    expect(erythemaIndex(0.2, -0.1)).toBeNaN();
  });
});
