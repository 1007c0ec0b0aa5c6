import { describe, expect, it } from 'vitest';
import { fitRobustRidge } from '../../../lib/colour/robust-ridge';
import { seededNormal, seededRandom } from '../../seeded-random';

const vague = { mean: 0, sd: 1000 };

describe('robust least squares with priors', () => {
  it('finds a line through scattered points', () => {
    const random = seededRandom(3);
    const rows = Array.from({ length: 200 }, (_, index) => {
      const at = index / 200;
      return { basis: [1, at], target: 2 + 3 * at + 0.1 * seededNormal(random), sigma: 0.1 };
    });
    const { parameters } = fitRobustRidge(rows, [vague, vague]);
    expect(parameters[0]).toBeCloseTo(2, 1);
    expect(parameters[1]).toBeCloseTo(3, 1);
  });

  it('is not bent by a third of gross errors on one side', () => {
    const random = seededRandom(4);
    const rows = Array.from({ length: 60 }, (_, index) => ({
      basis: [1],
      target: (index % 3 === 0 ? 9 : 5) + 0.1 * seededNormal(random),
      sigma: 0.1,
    }));
    expect(Math.abs(fitRobustRidge(rows, [vague]).parameters[0] - 5)).toBeLessThan(0.1);
  });

  it('weighs prior and data by their variances', () => {
    // One observation 2 ± 1 against a prior 0 ± 1: the mean of both.
    expect(fitRobustRidge([{ basis: [1], target: 1, sigma: 1 }], [{ mean: 0, sd: 1 }]).parameters[0]).toBeCloseTo(0.5, 1);
    expect(fitRobustRidge([], [{ mean: 0.3, sd: 1 }]).parameters[0]).toBeCloseTo(0.3, 12);
  });

  it('names the rule where a prior leaves no room at all', () => {
    expect(() => fitRobustRidge([], [{ mean: 0, sd: Infinity }])).toThrow(/sd > 0, received Infinity/);
  });
});
