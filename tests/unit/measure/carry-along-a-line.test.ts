import { describe, expect, it } from 'vitest';
import { carryMargin } from '../../../lib/measure/carry-margin';
import type { LineMm } from '../../../lib/units';
import { turned } from './shapes';

/** Ten millimetres straight down the page; its points lie a quarter of a millimetre apart. */
const straight = (acrossMm: number, fromMm = 0, toMm = 10): LineMm => [{ acrossMm, downMm: fromMm }, { acrossMm, downMm: toMm }];
const known = (line: LineMm, weight = 1) => ({ line, uMm: 1 / Math.sqrt(weight) });
const at = (line: LineMm, downMm: number) => line[Math.round(4 * downMm)].acrossMm;

describe('a margin and lines carried beside it', () => {
  it('are met half way on either side, as far off as a millimetre and a half and no farther', () => {
    for (const [aside, moved] of [[0.6, 0.3], [-0.6, -0.3], [1.5, 0.75], [-1.5, -0.75], [1.75, 0], [-1.75, 0]]) {
      const { line } = carryMargin(known(straight(0)), [known(straight(aside))]);
      expect(line).toHaveLength(41);
      expect(at(line, 5)).toBeCloseTo(moved, 9);
      expect(line[20].downMm).toBeCloseTo(5, 9);
    }
  });

  it('move alike whichever way the toe lies on the card', () => {
    const [own, other] = [[{ acrossMm: 0, downMm: 0 }, { acrossMm: 1, downMm: 10 }], straight(0.8)];
    const upright = carryMargin(known(own), [known(other, 3)]);
    const askew = carryMargin(known(turned(own, 70)), [known(turned(other, 70), 3)]);
    expect(upright.line).toHaveLength(41);
    turned(upright.line, 70).forEach(({ acrossMm, downMm }, i) => {
      expect(askew.line[i].acrossMm).toBeCloseTo(acrossMm, 9);
      expect(askew.line[i].downMm).toBeCloseTo(downMm, 9);
    });
  });

  it('come together gradually where the other one ends: the mean of seven places, a millimetre and a half', () => {
    // The other one is beside the points from 0.25 to 4.75 mm, which it draws 0.3 mm aside.
    const { line } = carryMargin(known(straight(0)), [known(straight(0.6, 0, 5))]);
    expect(at(line, 2)).toBeCloseTo(0.3, 9);
    expect(at(line, 4.75)).toBeCloseTo((4 / 7) * 0.3, 9);
    expect(at(line, 5)).toBeCloseTo((3 / 7) * 0.3, 9);
    expect(at(line, 5.5)).toBeCloseTo((1 / 7) * 0.3, 9);
    expect(at(line, 8)).toBeCloseTo(0, 9);
    // The first point has its own offset of nothing and those of the three that follow it.
    expect(at(line, 0)).toBeCloseTo((3 / 4) * 0.3, 9);
  });
});

describe('the middle of three margins or more', () => {
  const middle = (own: number, others: readonly (readonly [acrossMm: number, weight: number])[]) =>
    at(carryMargin(known(straight(0), own), others.map(([acrossMm, weight]) => known(straight(acrossMm), weight))).line, 5);

  it('is the one between the others, in whichever order they come', () => {
    expect(middle(1, [[0.6, 1], [0.3, 1]])).toBeCloseTo(0.3, 9);
    expect(middle(1, [[0.3, 1], [0.6, 1]])).toBeCloseTo(0.3, 9);
    expect(middle(1, [[0.6, 1], [-0.3, 1]])).toBeCloseTo(0, 9);
    expect(middle(1, [[-0.2, 1], [-0.6, 1]])).toBeCloseTo(-0.2, 9);
  });

  it('lies between two where half of all weight lies between their middles', () => {
    // Weights 1, 1 and 4: half is 3, the middles of the last two are at 1.5 and 4.
    expect(middle(1, [[-0.6, 4], [-0.3, 1]])).toBeCloseTo(-0.3 - ((3 - 1.5) / (4 - 1.5)) * 0.3, 9);
    expect(middle(4, [[0.6, 1], [0.3, 1]])).toBeCloseTo(0.3 - ((3 - 1.5) / (4 - 1.5)) * 0.3, 9);
    // Weights 3, 4 and 1: half is 4, the middles of the first two are at 1.5 and 5.
    expect(middle(3, [[-0.6, 1], [-0.3, 4]])).toBeCloseTo(-((4 - 1.5) / (5 - 1.5)) * 0.3, 9);
  });

  it('is the same in a mirror: four that count alike have their middle half way between the inner two', () => {
    expect(middle(1, [[0.2, 1], [0.4, 1], [0.6, 1]])).toBeCloseTo(0.3, 9);
    expect(middle(1, [[-0.2, 1], [-0.4, 1], [-0.6, 1]])).toBeCloseTo(-0.3, 9);
    expect(middle(4, [[-0.3, 1], [-0.6, 1]])).toBeCloseTo(-middle(4, [[0.3, 1], [0.6, 1]]), 9);
    expect(middle(4, [[-0.3, 1], [-0.6, 1]])).toBeCloseTo(-0.12, 9);
  });
});

describe('the uncertainty of margins brought together', () => {
  it('falls with their number down to what the best of them shares with all', () => {
    const twenty = Array.from({ length: 20 }, () => ({ line: straight(0), uMm: 0.2 }));
    expect(carryMargin({ line: straight(0), uMm: 0.4 }, twenty.slice(0, 1)).uMm).toBeCloseTo(1 / Math.sqrt(6.25 + 25), 9);
    expect(carryMargin({ line: straight(0), uMm: 0.4 }, twenty).uMm).toBeCloseTo(0.2 / Math.SQRT2, 9);
  });
});
