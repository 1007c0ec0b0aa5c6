import { describe, expect, it } from 'vitest';
import { turnUpright } from '../../../lib/photo/turn-upright';

/** Two columns, three rows, each pixel with its own letter in red. */
const stored = {
  widthPx: 2,
  heightPx: 3,
  srgb: Uint8Array.from('abcdef', (letter) => letter.charCodeAt(0)).reduce(
    (all, code, i) => (all.set([code, 0, 0], i * 3), all),
    new Uint8Array(18),
  ),
};

describe('turning a stored picture upright', () => {
  /**
   * TIFF 6.0, tag 274, by hand: "the 0th row represents the visual top / bottom / left / right, the 0th column the
   * visual left / right / top / bottom". Stored rows: ab, cd, ef.
   */
  it.each([
    [1, ['ab', 'cd', 'ef']],
    [2, ['ba', 'dc', 'fe']],
    [3, ['fe', 'dc', 'ba']],
    [4, ['ef', 'cd', 'ab']],
    [5, ['ace', 'bdf']],
    [6, ['eca', 'fdb']],
    [7, ['fdb', 'eca']],
    [8, ['bdf', 'ace']],
  ])('puts each pixel where orientation %d says', (orientation, rows) => {
    const upright = turnUpright(stored, orientation);
    const letters = String.fromCharCode(...upright.srgb.filter((_, i) => i % 3 === 0));
    expect([upright.widthPx, upright.heightPx]).toEqual([rows[0].length, rows.length]);
    expect(letters).toBe(rows.join(''));
  });

  it('refuses an orientation that the tag does not have, and says which', () => {
    expect(() => turnUpright(stored, 9)).toThrow(/1…8, received 9/);
  });
});
