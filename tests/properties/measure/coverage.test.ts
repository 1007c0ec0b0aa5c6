/**
 * Does the stated interval hold the truth as often as it says? Toes of known shape are photographed with errors of the
 * stated size (see noisy-toe), and the k = 2 interval of each number has to hold the truth in 93–97 % of them.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Measurand } from '../../../lib/measure/measure-input';
import { measureToe } from '../../../lib/measure/measure-toe';
import { isMeasured } from '../../../lib/result';
import { seededNormal, seededRandom } from '../../seeded-random';
import { photographed, trueToe } from './noisy-toe';
import type { Chance } from './noisy-toe';

const TOES = 1200;
const KEYS = ['erythemaArea', 'reach', 'reachP95', 'proximalReach', 'grooveWidth', 'grooveWidthMax'] as const;

interface Tally {
  held: number;
  count: number;
  squares: number;
}

const tallies = new Map<Measurand, Tally>(KEYS.map((key) => [key, { held: 0, count: 0, squares: 0 }]));

function photographOne(chance: Chance): void {
  const truth = trueToe(chance);
  const photo = photographed(chance, truth, {
    printRelativeU: chance.uniform() < 0.5 ? 0.005 : 0.03,
    tiltDeg: 20 * chance.uniform(),
    distanceMm: 180 + 120 * chance.uniform(),
    distanceRelativeU: 0,
    homographyResidualMm: 0.02 + 0.2 * chance.uniform(),
    pxPerMm: 12,
  });
  const expected = measureToe(truth).measurements;
  const found = measureToe(photo).measurements;
  for (const [key, tally] of tallies) {
    const [right, stated] = [expected[key], found[key]];
    if (!isMeasured(right) || !isMeasured(stated)) continue;
    tally.count += 1;
    tally.held += Math.abs(stated.value - right.value) <= stated.U ? 1 : 0;
    tally.squares += ((stated.value - right.value) / stated.u) ** 2;
  }
}

beforeAll(() => {
  const uniform = seededRandom(20260302);
  const chance = { uniform, normal: () => seededNormal(uniform) };
  for (let toe = 0; toe < TOES; toe += 1) photographOne(chance);
});

describe('the k = 2 interval', () => {
  it.each(KEYS)('of %s holds the truth in 93–97 %% of photos', (key) => {
    const { held, count } = tallies.get(key) as Tally;
    expect(held / count).toBeGreaterThanOrEqual(0.93);
    expect(held / count).toBeLessThanOrEqual(0.97);
  });

  it.each(KEYS)('of %s is neither too wide nor too narrow: error over u is 1 within 0.15, root mean square', (key) => {
    const { squares, count } = tallies.get(key) as Tally;
    expect(Math.abs(Math.sqrt(squares / count) - 1)).toBeLessThan(0.15);
  });

  it('is there for at least 99 % of the toes', () => {
    for (const { count } of tallies.values()) expect(count).toBeGreaterThanOrEqual(0.99 * TOES);
  });
});
