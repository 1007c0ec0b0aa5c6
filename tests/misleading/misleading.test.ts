/** What lies on a toe, or falls on it, is not taken for redness. */
import { describe, expect, it } from 'vitest';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { MISLEADINGS } from '../phantom/misleading-spec';
import { isGross, judgeMisleading, type MisleadingPhoto } from './judge-misleading';

const RENDERING_MS = 300_000;

describe('a toe without redness', () => {
  it.each(MISLEADINGS)('but with %s is said to have none, or to be no case for a number', async (kind) => {
    const [photo] = await judgeMisleading(kind, 1, 1, false, await analysisPorts());
    expect(photo.trueMm2).toBe(0);
    expect(photo.area).toHaveProperty('notMeasured');
  }, RENDERING_MS);
});

describe('a gross error', () => {
  const photo: MisleadingPhoto = { kind: 'iodine', skinClass: 'light', trueMm2: 40, area: null };
  const withArea = (value: number, trueMm2: number) => ({ ...photo, trueMm2, area: { value, u: 1, U: 2, unit: 'mm2' } as const });

  it('is an area off by more than a factor of two, or redness where there is none', () => {
    expect([withArea(81, 40), withArea(19, 40), withArea(6.1, 0)].map(isGross)).toEqual([true, true, true]);
    expect([withArea(79, 40), withArea(21, 40), withArea(5.9, 0), photo].map(isGross)).toEqual([false, false, false, false]);
  });
});
