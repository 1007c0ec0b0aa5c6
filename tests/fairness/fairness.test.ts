/** The build fails when redness of the same contrast is missed more often on one skin than on another. */
import { describe, expect, it } from 'vitest';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { SKIN_CLASSES } from '../phantom/skin/skin-class';
import { bloodForContrast, CONTRAST_EI, equalContrastSpec } from './equal-contrast';
import { judgeClasses, unfairClasses } from './judge-class';

/** Twelve phantoms are rendered the first time; a busy machine needs minutes for that. */
const RENDERING_MS = 400_000;

describe('redness of equal contrast', () => {
  it('is missed in no class of skin more than five points more often than in the best', async () => {
    const rows = await judgeClasses(2, 2, await analysisPorts(), 2);
    for (const { skinClass, photos, answers } of rows) console.info(`${skinClass}: ${photos} photos, ${Object.entries(answers).map(([answer, n]) => `${answer} ${n}`).join(', ')}`);
    expect(rows.every(({ photos }) => photos > 0)).toBe(true);
    expect(unfairClasses(rows)).toEqual([]);
  }, RENDERING_MS);

  it('takes more blood on darker skin: that is what equal contrast means', () => {
    const light = bloodForContrast(58, CONTRAST_EI);
    const dark = bloodForContrast(-42, CONTRAST_EI);
    expect(light).toBeGreaterThan(0.012);
    expect(dark).toBeGreaterThan(1.5 * light);
    expect(dark).toBeLessThan(0.06);
  });

  it('lies on the same toe in the same light in every class', () => {
    const [first, ...others] = SKIN_CLASSES.map((skinClass) => equalContrastSpec(skinClass, 4, 9));
    for (const other of others) {
      expect({ ...other, toe: null, wound: null }).toEqual({ ...first, toe: null, wound: null });
      expect({ ...other.wound.redness[0], addedBloodShare: 0 }).toEqual({ ...first.wound.redness[0], addedBloodShare: 0 });
    }
  });
});

describe('the limit', () => {
  it('is broken by a class that is six points behind, and by no smaller difference', () => {
    expect(unfairClasses([{ skinClass: 'light', notMissed: 1 }, { skinClass: 'dark', notMissed: 0.94 }])).toHaveLength(1);
    expect(unfairClasses([{ skinClass: 'light', notMissed: 0.95 }, { skinClass: 'dark', notMissed: 0.9 }])).toEqual([]);
  });
});
