import { describe, expect, it } from 'vitest';
import { printCheck } from '../../../lib/card/print-check';

describe('the print check', () => {
  it('counts a print that nobody checked as true to scale with 3 % uncertainty', () => {
    expect(printCheck({ barReadsMm: null, bankCardFits: null })).toEqual({ scale: 1, relativeU: 0.03, confirmed: false });
  });

  it('takes the scale from the bar, with 0.5 % uncertainty', () => {
    expect(printCheck({ barReadsMm: 47, bankCardFits: null })).toEqual({ scale: 0.94, relativeU: 0.005, confirmed: true });
    expect(printCheck({ barReadsMm: 47, bankCardFits: false })).toEqual({ scale: 0.94, relativeU: 0.005, confirmed: true });
  });

  it('is confirmed by a bank card that fits', () => {
    expect(printCheck({ barReadsMm: null, bankCardFits: true })).toEqual({ scale: 1, relativeU: 0.005, confirmed: true });
  });

  it('accepts readings from 40 to 60 mm and refuses the next ones, naming what was received', () => {
    expect(printCheck({ barReadsMm: 40, bankCardFits: null })).toMatchObject({ scale: 0.8 });
    expect(printCheck({ barReadsMm: 60, bankCardFits: null })).toMatchObject({ scale: 1.2 });
    for (const barReadsMm of [39.99, 60.01, 5, 1.97, 0, -50, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(printCheck({ barReadsMm, bankCardFits: null })).toEqual({ problem: expect.stringContaining(`received ${barReadsMm}`) });
    }
  });

  it('asks for the bar when a bank card does not fit', () => {
    expect(printCheck({ barReadsMm: null, bankCardFits: false })).toEqual({ problem: expect.stringContaining('measure the 50 mm bar') });
  });

  it('refuses two findings that contradict each other', () => {
    expect(printCheck({ barReadsMm: 50.9, bankCardFits: true })).toMatchObject({ confirmed: true });
    expect(printCheck({ barReadsMm: 48.5, bankCardFits: true })).toEqual({ problem: expect.stringContaining('48.5 mm') });
  });
});
