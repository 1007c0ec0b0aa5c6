/** What must not change when the same toe is written down differently. Seeded, so that a failure can be repeated. */
import { describe, expect, it } from 'vitest';
import type { MeasureInput, Measurand, Outlines } from '../../../lib/measure/measure-input';
import { measureToe } from '../../../lib/measure/measure-toe';
import { regionAreaMm2 } from '../../../lib/measure/region-area';
import { resampleLine } from '../../../lib/measure/resample-line';
import { isMeasured } from '../../../lib/result';
import type { Region } from '../../../lib/segment/segmentation';
import type { RingMm } from '../../../lib/units';
import { seededRandom } from '../../seeded-random';
import { SIMPLE, region } from '../../unit/measure/simple-toe';
import { moved, scaled, turned, wobblyRing } from '../../unit/measure/shapes';

const LENGTHS: readonly Measurand[] = ['reach', 'reachP95', 'proximalReach', 'unrolledReach', 'grooveWidth', 'grooveWidthMax'];
const AREAS: readonly Measurand[] = ['erythemaArea', 'unrolledArea', 'rawArea', 'maceratedArea'];
/** Distances are taken from points 0.1 mm apart; a corner can fall between two of them: at most 0.05 mm is missed. */
const SAMPLING_MM = 0.05;

/** Ten toes with an irregular region that stays on the card and on the toe. */
const TOES: readonly MeasureInput[] = Array.from({ length: 10 }, (_, index) => {
  const random = seededRandom(100 + index);
  const ring = scaled(wobblyRing(random, 12 + 3 * index), 0.4);
  const centre = ring.reduce((sum, { acrossMm, downMm }) => [sum[0] + acrossMm, sum[1] + downMm], [0, 0]);
  const onToe = moved(ring, 49 - centre[0] / ring.length, 37 - centre[1] / ring.length);
  return { ...SIMPLE, toeAxis: { across: 0, down: 1 }, outlines: { ...SIMPLE.outlines, erythema: region(onToe) } };
});

function valuesOf(input: MeasureInput): Partial<Record<Measurand, number>> {
  const { measurements } = measureToe(input);
  return Object.fromEntries(
    [...LENGTHS, ...AREAS].map((key) => {
      const measurement = measurements[key];
      if (!isMeasured(measurement)) throw new Error(`${key} was refused: ${measurement.notMeasured}`);
      return [key, measurement.value];
    }),
  );
}

/** The same toe with every line and ring of it taken through a mapping. */
function mapped(input: MeasureInput, map: (line: RingMm) => RingMm): MeasureInput {
  const mapRegion = (one: Region | null): Region | null =>
    one && { ...one, rings: one.rings.map(({ ring, hole }) => ({ ring: map(ring), hole })) };
  const { erythema, raw, macerated, nailPlate, toe, nailFoldMargin, marginLateral, cutEdge } = input.outlines;
  const outlines: Outlines = {
    erythema: mapRegion(erythema),
    raw: mapRegion(raw),
    macerated: mapRegion(macerated),
    nailPlate: mapRegion(nailPlate),
    toe: mapRegion(toe),
    nailFoldMargin: nailFoldMargin && { ...nailFoldMargin, line: map(nailFoldMargin.line) },
    marginLateral: marginLateral && map(marginLateral),
    cutEdge: cutEdge && { ...cutEdge, line: map(cutEdge.line) },
  };
  return { ...input, outlines };
}

function expectSame(found: MeasureInput, original: MeasureInput, scale = 1, toleranceMm = SAMPLING_MM): void {
  const before = valuesOf(original);
  const after = valuesOf(found);
  for (const key of LENGTHS) {
    expect(Math.abs((after[key] ?? NaN) - scale * (before[key] ?? NaN)), key).toBeLessThan(toleranceMm);
  }
  for (const key of AREAS) {
    // Projected areas are exact; the unrolled one is taken from points 0.1 mm apart.
    const digits = key === 'unrolledArea' ? 2 : 9;
    expect((after[key] ?? NaN) / (scale ** 2 * (before[key] ?? NaN)), key).toBeCloseTo(1, digits);
  }
}

describe('measurements do not change', () => {
  it('when the toe lies elsewhere in the map', () => {
    for (const toe of TOES) expectSame(mapped(toe, (line) => moved(line, 3.3, -2.7)), toe);
  });

  it('when map and toe are turned together', () => {
    for (const [index, toe] of TOES.entries()) {
      const angleDeg = 7 * (index + 1);
      const angle = (angleDeg * Math.PI) / 180;
      // Turned about the middle of the toe, so that it stays on the map.
      const about = (line: RingMm): RingMm => moved(turned(moved(line, -44, -30), angleDeg), 44, 30);
      const found = { ...mapped(toe, about), toeAxis: { across: -Math.sin(angle), down: Math.cos(angle) } };
      expectSame(found, toe);
    }
  });

  it('when rings and lines are written the other way round', () => {
    for (const toe of TOES) expectSame(mapped(toe, (line) => [...line].reverse()), toe);
  });

  it('when rings start at another point', () => {
    for (const toe of TOES) {
      const erythema = toe.outlines.erythema;
      const ring = erythema?.rings[0].ring ?? [];
      const again = region([...ring.slice(5), ...ring.slice(0, 5)]);
      expectSame({ ...toe, outlines: { ...toe.outlines, erythema: again } }, toe);
    }
  });

  it('when points are added on straight sides', () => {
    for (const toe of TOES) {
      const between = (line: RingMm): RingMm =>
        line.flatMap((point, index) => {
          const next = line[index + 1];
          if (next === undefined) return [point];
          const middle = { acrossMm: (point.acrossMm + next.acrossMm) / 2, downMm: (point.downMm + next.downMm) / 2 };
          return [point, middle];
        });
      expectSame(mapped(toe, between), toe);
    }
  });

  it('when they are taken again', () => {
    for (const toe of TOES) expect(measureToe(toe)).toEqual(measureToe(toe));
  });
});

describe('measurements follow', () => {
  it('a scale s: lengths × s, areas × s²', () => {
    for (const toe of TOES) expectSame(mapped(toe, (line) => scaled(line, 1.05)), toe, 1.05, 2 * SAMPLING_MM);
  });

  it('their parts: cut by a straight line across the toe, the areas of both halves add up', () => {
    for (const toe of TOES) {
      const ring = toe.outlines.erythema?.rings[0].ring ?? [];
      const cut = (upper: boolean): RingMm =>
        resampleLine(ring, 0.01, true).map(({ acrossMm, downMm }) => ({
          acrossMm,
          downMm: upper ? Math.min(37, downMm) : Math.max(37, downMm),
        }));
      const area = (one: RingMm): number => regionAreaMm2([{ ring: one, hole: false }]);
      expect((area(cut(true)) + area(cut(false))) / area(ring)).toBeCloseTo(1, 3);
    }
  });

  it('inclusion: a hole makes the area smaller and leaves the reach', () => {
    for (const toe of TOES) {
      const ring = toe.outlines.erythema?.rings[0].ring ?? [];
      const inner = scaled(ring, 0.3).map(({ acrossMm, downMm }) => ({ acrossMm: acrossMm + 49 * 0.7, downMm: downMm + 37 * 0.7 }));
      const rings = [{ ring, hole: false }, { ring: inner, hole: true }];
      const holed = valuesOf({ ...toe, outlines: { ...toe.outlines, erythema: { rings, confidence: 1, boundaryUMm: 0.3 } } });
      const whole = valuesOf(toe);
      expect(holed.erythemaArea).toBeCloseTo((whole.erythemaArea ?? NaN) * 0.91, 6);
      expect(holed.reach).toBe(whole.reach);
    }
  });
});
