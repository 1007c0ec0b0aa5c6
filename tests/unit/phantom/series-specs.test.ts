import { describe, expect, it } from 'vitest';
import { buildScene } from '../../phantom/scene/build-scene';
import { seriesSpecs, type SeriesKind } from '../../phantom/series-specs';
import { toeTruth } from '../../phantom/truth/toe-truth';

const SMALL = { camera: { widthPx: 480, heightPx: 360, focal35Mm: 75, distanceMm: 260 }, card: { face: 'stand-in' }, wound: { macerationMm: 0 } };

function areas(kind: SeriesKind, days: readonly number[]): number[] {
  return seriesSpecs(kind, 51, SMALL)
    .filter(({ day }) => days.includes(day))
    .map(({ spec }) => toeTruth(buildScene(spec)).measurements.erythemaArea);
}

describe('a series of visits', () => {
  it('shows the same toe ten times within two weeks', () => {
    const visits = seriesSpecs('normal', 51, SMALL);
    expect(visits).toHaveLength(10);
    expect(new Set(visits.map(({ spec }) => JSON.stringify(spec.toe))).size).toBe(1);
    expect(new Set(visits.map(({ spec }) => spec.wound.side)).size).toBe(1);
    expect(new Set(visits.map(({ spec }) => JSON.stringify(spec.card))).size).toBe(1);
    expect(visits.map(({ day }) => day)).toEqual([...visits.map(({ day }) => day)].sort((a, b) => a - b));
  });

  it('shrinks when all goes as hoped', () => {
    const [early, late] = areas('normal', [2, 14]);
    expect(late).toBeLessThan(0.5 * early);
  });

  it('spreads from the sixth day on', () => {
    const [third, sixth, last] = areas('spreading', [3, 6, 14]);
    expect(sixth).toBeLessThanOrEqual(third * 1.05);
    expect(last).toBeGreaterThan(1.5 * sixth);
  });

  it('stays within a fifth when it is stalled', () => {
    const [seventh, last] = areas('stalled', [7, 14]);
    expect(Math.abs(last / seventh - 1)).toBeLessThan(0.2);
  });

  it('comes back in a relapse', () => {
    const [second, ninth, last] = areas('relapse', [2, 9, 14]);
    expect(ninth).toBeLessThan(0.75 * second);
    expect(last).toBeGreaterThan(1.4 * ninth);
  });

  it('is free of redness when clean', () => {
    expect(areas('clean', [1, 14])).toEqual([0, 0]);
  });
});
