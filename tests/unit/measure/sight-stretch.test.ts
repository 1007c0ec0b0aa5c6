import { describe, expect, it } from 'vitest';
import { measureToe } from '../../../lib/measure/measure-toe';
import { sightPerimeterMm, sightStretch } from '../../../lib/measure/sight-stretch';
import { leanPoint } from '../../../lib/measure/lean-point';
import { straightenPoint, type ToeRelief } from '../../../lib/measure/toe-relief';
import type { PointMm } from '../../../lib/units';
import { SIMPLE } from './simple-toe';

const cylinder = { axis: { across: 0, down: 1 }, startMm: 0, halfWidthsMm: Array.from({ length: 100 }, () => 10.6), centreMm: 40, centreSlope: 0 };
const relief: ToeRelief = { cylinder, lens: { acrossMm: -60, downMm: 20, heightMm: 220 } };

describe('an error in the picture', () => {
  it.each([34, 38, 44, 47])('grows as much as laying straight moves two neighbours apart: at %d mm across', (acrossMm) => {
    const flat = { acrossMm, downMm: 20 };
    const seen = leanPoint(relief, flat);
    const beside = (by: number): PointMm => straightenPoint(relief, { acrossMm: seen.acrossMm + by, downMm: seen.downMm });
    const grown = (beside(0.05).acrossMm - beside(-0.05).acrossMm) / 0.1;
    expect(Math.abs(sightStretch(relief, flat) / grown - 1)).toBeLessThan(0.05);
  });

  it('grows on the far side, shrinks on the near one, and no more than fourfold at the horizon', () => {
    const at = (acrossMm: number) => sightStretch(relief, { acrossMm, downMm: 20 });
    expect(at(33)).toBeLessThan(1);
    expect(at(47)).toBeGreaterThan(1.1);
    for (const acrossMm of [60, 80]) expect(at(acrossMm)).toBe(4);
  });

  it('counts an edge along the toe by that, and one across it once', () => {
    const edge = [{ acrossMm: 46, downMm: 15 }, { acrossMm: 46, downMm: 25 }];
    expect(sightPerimeterMm([edge], relief)).toBeCloseTo(10 * (sightStretch(relief, edge[0]) + sightStretch(relief, edge[1])), 9);
    expect(sightPerimeterMm([[{ acrossMm: 44, downMm: 20 }, { acrossMm: 46, downMm: 20 }]], relief)).toBeCloseTo(4, 9);
    expect(sightPerimeterMm([edge], null)).toBe(20);
  });

  it('makes redness on the far side less certain than the same redness under a lens on its own side', () => {
    const u = (lensAcrossMm: number) => {
      const { measurements } = measureToe({ ...SIMPLE, lens: { acrossMm: lensAcrossMm, downMm: 27, heightMm: 220 } });
      const area = measurements.erythemaArea;
      return 'value' in area ? area.u / area.value : NaN;
    };
    // The redness of the simple toe lies on its right; 19.7° to either side, for beyond 20° from the other one there is no area.
    expect(u(-29)).toBeGreaterThan(1.2 * u(129));
  });
});
