import { describe, expect, it } from 'vitest';
import { fitToneCurve } from '../../../lib/colour/fit-tone-curve';
import type { GreyPair } from '../../../lib/colour/fit-tone-curve';
import { decodeSrgb } from '../../../lib/colour/decode-srgb';
import { logLightOf, toneTables } from '../../../lib/colour/tone-curve';
import type { ToneCurve } from '../../../lib/colour/tone-curve';

const CURVE: ToneCurve = { gamma: 0.08, contrast: 0.15, shoulder: 0.2 };
const WHITE_CODE = 225;
const CODES = [25, 50, 80, 115, 150, 185, 210];

/** Greys whose light is known exactly, seen through `CURVE`. */
const knownGreys = (): GreyPair[] =>
  CODES.flatMap((code) =>
    [0, 1, 2].map(() => ({
      name: `grey${code}`,
      code,
      whiteCode: WHITE_CODE,
      expectedLight: Math.exp(logLightOf(CURVE, code) - logLightOf(CURVE, WHITE_CODE)),
    })),
  );

/** Largest relative error of light between two codes of skin. */
const slopeError = (curve: ToneCurve): number =>
  Math.max(
    ...[60, 90, 120, 150, 180].map((code) => {
      const step = (of: ToneCurve) => logLightOf(of, code + 20) - logLightOf(of, code);
      return Math.abs(step(curve) / step(CURVE) - 1);
    }),
  );

describe('the tables of a tone curve', () => {
  it('are sRGB where nothing departs from it', () => {
    const { red } = toneTables({ gamma: 0, contrast: 0, shoulder: 0 });
    for (const code of [1, 10, 11, 100, 254, 255]) expect(red[code]).toBeCloseTo(decodeSrgb(code), 6);
    expect(red[0]).toBe(0);
  });

  it('rise all the way and end at 1', () => {
    const { green } = toneTables(CURVE);
    for (let code = 1; code < 256; code += 1) expect(green[code]).toBeGreaterThan(green[code - 1]);
    expect(green[255]).toBe(1);
  });
});

describe('fitting a tone curve to known greys', () => {
  it('recovers the curve', () => {
    const { curve, leaveOneOut } = fitToneCurve(knownGreys(), true);
    expect(slopeError(curve)).toBeLessThan(0.03);
    expect(leaveOneOut).toBeLessThan(0.02);
  });

  it('is not bent by a reflex on one patch', () => {
    const reflex = knownGreys().map((pair) => (pair.name === 'grey80' ? { ...pair, code: 140 } : pair));
    expect(slopeError(fitToneCurve(reflex, true).curve)).toBeLessThan(0.05);
  });

  it('never gives more code less light, however the greys contradict each other', () => {
    const shuffled = knownGreys().map((pair, index, all) => ({ ...pair, code: all[(index + 9) % all.length].code }));
    const { curve } = fitToneCurve(shuffled, true);
    for (let code = 1; code < 256; code += 1) expect(logLightOf(curve, code)).toBeGreaterThan(logLightOf(curve, code - 1));
  });

  it('keeps the standard curve without greys', () => {
    expect(fitToneCurve([], false).curve).toEqual({ gamma: 0, contrast: 0, shoulder: 0 });
  });

  it('gives a printer that is not known part of the blame', () => {
    const known = fitToneCurve(knownGreys(), true).curve;
    const unknown = fitToneCurve(knownGreys(), false).curve;
    expect(Math.abs(unknown.gamma)).toBeLessThan(Math.abs(known.gamma) + 0.05);
    expect(slopeError(unknown)).toBeLessThan(0.1);
  });
});
