import { describe, expect, it } from 'vitest';
import { differenceCiede2000 } from '../../../lib/colour/difference-ciede2000';
import { SHARMA_2005 } from './ciede2000-sharma-2005';

describe('ΔE00 against the published test data', () => {
  it.each(SHARMA_2005.map((row, index) => ({ row, number: index + 1 })))(
    'pair $number agrees to four decimals in both orders',
    ({ row: [l1, a1, b1, l2, a2, b2, published] }) => {
      const first = { l65: l1, a65: a1, b65: b1 };
      const second = { l65: l2, a65: a2, b65: b2 };
      expect(differenceCiede2000(first, second)).toBeCloseTo(published, 4);
      expect(differenceCiede2000(second, first)).toBeCloseTo(published, 4);
    },
  );

  it('has all 34 pairs', () => {
    expect(SHARMA_2005).toHaveLength(34);
  });

  it('jumps where two hues lie opposite, as rows 10 and 11 document', () => {
    const opposite = (b65: number) =>
      differenceCiede2000({ l65: 50, a65: 2.49, b65: -0.001 }, { l65: 50, a65: -2.49, b65 });
    expect(opposite(0.001)).toBeCloseTo(7.1792, 4);
    expect(opposite(0.0011)).toBeCloseTo(7.2195, 4);
  });
});
