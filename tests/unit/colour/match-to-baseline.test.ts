import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import type { CodeTriple } from '../../../lib/colour/card-readings';
import { matchToBaseline } from '../../../lib/colour/match-to-baseline';
import { multiplyMatrixVector } from '../../../lib/colour/multiply-matrix-vector';
import type { Matrix3 } from '../../../lib/colour/multiply-matrix-vector';
import type { PatchLight } from '../../../lib/colour/read-patch-light';
import { seededNormal, seededRandom } from '../../seeded-random';
import { nominalPrinter } from './simulate-card-photo';

const random = seededRandom(31);
const lightsOf = (change: (light: CodeTriple) => CodeTriple, noise = 0.01): PatchLight[] =>
  OWN_CARD.patches.map((patch) => {
    const [red, green, blue] = change(nominalPrinter(patch)).map((value) => value * (1 + noise * seededNormal(random)));
    return { patch, light: { red, green, blue } };
  });
const baseline = lightsOf((light) => light);
/** Another phone's colour matrix; greys stay grey. */
const OTHER_PHONE: Matrix3 = [
  [1.15, -0.1, -0.05],
  [-0.08, 1.12, -0.04],
  [0.02, -0.15, 1.13],
];

describe('bringing a photo to the colours of the baseline', () => {
  it('undoes another phone’s colour matrix and leaves greys grey', () => {
    const match = matchToBaseline(lightsOf((light) => multiplyMatrixVector(OTHER_PHONE, light)), baseline);
    expect(match.kind).toBe('matrix');
    expect(match.leaveOneOutDeltaE).toBeLessThan(0.5 * (match.unmatchedDeltaE ?? 0));
    const [red, green, blue] = multiplyMatrixVector(match.matrix, [0.4, 0.4, 0.4]);
    expect(Math.max(red, green, blue) - Math.min(red, green, blue)).toBeLessThan(1e-12);
    const skin = multiplyMatrixVector(match.matrix, multiplyMatrixVector(OTHER_PHONE, [0.55, 0.35, 0.28]));
    expect(Math.abs(100 * Math.log10((skin[0] / skin[1]) * (0.35 / 0.55)))).toBeLessThan(1);
  });

  it('undoes a white that was read too yellow', () => {
    const match = matchToBaseline(lightsOf(([r, g, b]) => [r, g, 0.8 * b]), baseline);
    expect(match.kind).toBe('gains');
    expect(match.matrix[2][2]).toBeCloseTo(1.25, 1);
  });

  it('does nothing where nothing would help', () => {
    const scattered = (seed: number) => {
      const own = seededRandom(seed);
      return baseline.map(({ patch, light: { red, green, blue } }) => {
        const by = () => Math.exp(0.08 * seededNormal(own));
        return { patch, light: { red: red * by(), green: green * by(), blue: blue * by() } };
      });
    };
    for (let seed = 1; seed <= 20; seed += 1) {
      const match = matchToBaseline(scattered(seed), baseline);
      expect(match.leaveOneOutDeltaE).toBeLessThanOrEqual(match.unmatchedDeltaE ?? NaN);
      for (const row of [0, 1, 2]) expect(Math.abs(match.matrix[row][row] - 1)).toBeLessThan(0.15);
    }
    expect(matchToBaseline(baseline, baseline).kind).toBe('none');
  });

  it('is not led astray by a reflex on one patch', () => {
    const now = lightsOf((light) => multiplyMatrixVector(OTHER_PHONE, light)).map((entry) =>
      entry.patch.name === 'red' ? { ...entry, light: { red: 0.9, green: 0.9, blue: 0.9 } } : entry,
    );
    const { matrix } = matchToBaseline(now, baseline);
    const skin = multiplyMatrixVector(matrix, multiplyMatrixVector(OTHER_PHONE, [0.55, 0.35, 0.28]));
    expect(Math.abs(100 * Math.log10((skin[0] / skin[1]) * (0.35 / 0.55)))).toBeLessThan(1.5);
  });

  it('refuses to match on fewer than six patches', () => {
    const few = lightsOf((light) => multiplyMatrixVector(OTHER_PHONE, light)).slice(0, 5);
    expect(matchToBaseline(few, baseline).kind).toBe('none');
    expect(matchToBaseline([], baseline).unmatchedDeltaE).toBeNull();
  });
});
