/**
 * Expected values: extinction of haemoglobin from S. Prahl's compilation (OMLC 1998; public repository droumis/spectra,
 * data_hb.csv); melanosome and bloodless skin worked out by hand from the formulas of S. Jacques (OMLC 1998); whole blood
 * from 2.303 ε 150 / 64 500 (Prahl).
 */
import { describe, expect, it } from 'vitest';
import { bloodlessSkinPerCm, melanosomePerCm, wholeBloodPerCm } from '../../phantom/skin/absorption';
import { DEOXYHAEMOGLOBIN_EXTINCTION, OXYHAEMOGLOBIN_EXTINCTION } from '../../phantom/skin/haemoglobin-extinction';
import { WAVELENGTHS_NM } from '../../phantom/skin/wavelengths';

const indexOf = (nm: number): number => WAVELENGTHS_NM.indexOf(nm);

const HAEMOGLOBIN: readonly (readonly [number, number, number])[] = [
  [450, 62816, 103292], [460, 44480, 23388.8], [470, 33209.2, 16156.4], [480, 26629.2, 14550], [490, 23684.4, 16684],
  [500, 20932.8, 20862], [510, 20035.2, 25773.6], [520, 24202.4, 31589.6], [530, 39956.8, 39036.4], [540, 53236, 46592],
  [550, 43016, 53412], [560, 32613.2, 53788], [570, 44496, 45072], [580, 50104, 37020], [590, 14400.8, 28324.4],
  [600, 3200, 14677.2], [610, 1506, 9443.6], [620, 942, 6509.6], [630, 610, 5148.8], [640, 442, 4345.2],
  [650, 368, 3750.12], [660, 319.6, 3226.56], [680, 277.6, 2407.92], [700, 290, 1794.28],
];

describe('what skin is made of', () => {
  it.each(HAEMOGLOBIN)('absorbs at %i nm like the published haemoglobin', (nm, oxygenated, deoxygenated) => {
    expect(OXYHAEMOGLOBIN_EXTINCTION[indexOf(nm)]).toBe(oxygenated);
    expect(DEOXYHAEMOGLOBIN_EXTINCTION[indexOf(nm)]).toBe(deoxygenated);
  });

  it.each([[450, 993.7], [500, 688.7], [540, 526.9], [560, 464.3], [577, 418.4], [600, 365.2], [650, 276.4], [700, 213.6]])(
    'holds melanosomes that absorb as published at %i nm',
    (nm, perCm) => expect(melanosomePerCm(nm)).toBeCloseTo(perCm, 1),
  );

  it.each([[450, 1.219], [500, 0.702], [540, 0.494], [560, 0.429], [577, 0.387], [600, 0.345], [650, 0.292], [700, 0.266]])(
    'absorbs as published without blood at %i nm',
    (nm, perCm) => expect(bloodlessSkinPerCm(nm)).toBeCloseTo(perCm, 3),
  );

  it.each([[540, 285.1], [560, 174.7], [600, 17.1], [660, 1.71]])('holds oxygenated blood as published at %i nm', (nm, perCm) => {
    expect(Math.abs(wholeBloodPerCm(indexOf(nm), 1) / perCm - 1)).toBeLessThan(0.003);
  });
});
