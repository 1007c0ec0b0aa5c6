import { describe, expect, it } from 'vitest';
import { joinedToFold } from '../../../lib/segment/joined-to-fold';
import type { LineMm, RingMm } from '../../../lib/units';
import { box } from './square-toe';

/** The right side of a nail whose middle lies at 41 mm. */
const LINE: LineMm = Array.from({ length: 14 }, (_, i) => ({ acrossMm: 46, downMm: 25 + i })).concat([{ acrossMm: 44, downMm: 38 }, { acrossMm: 41, downMm: 38 }]);
const MARGIN = { line: LINE, side: 'right' } as const;
/** Points every half millimetre, as outlines have them. */
const dense = (ring: RingMm): RingMm =>
  ring.flatMap((from, i) => {
    const to = ring[(i + 1) % ring.length];
    const steps = Math.ceil(2 * Math.hypot(to.acrossMm - from.acrossMm, to.downMm - from.downMm));
    return Array.from({ length: steps }, (_, k) => ({ acrossMm: from.acrossMm + ((to.acrossMm - from.acrossMm) * k) / steps, downMm: from.downMm + ((to.downMm - from.downMm) * k) / steps }));
  });
const piece = (...sides: Parameters<typeof box>) => ({ outer: dense(box(...sides)) });
/** Soggy skin that goes round the nail from fold to fold. */
const SOGGY = piece(34, 38.5, 49, 41);

describe('redness belongs to the treated fold', () => {
  it.each([
    ['0.9 mm beside the margin', piece(46.9, 28, 50, 36), true],
    ['1.1 mm beside it', piece(47.1, 28, 50, 36), false],
    ['over it', piece(45, 28, 50, 36), true],
    ['round its proximal end, to the other fold', piece(36, 38.6, 44, 42), true],
  ])('where it lies %s', (_, redness, joined) => {
    expect(joinedToFold(MARGIN, [])(redness)).toBe(joined);
  });

  it('where only soggy skin joins it, on the treated half', () => {
    expect(joinedToFold(MARGIN, [])(piece(48, 41.5, 52, 46))).toBe(false);
    expect(joinedToFold(MARGIN, [SOGGY])(piece(48, 41.5, 52, 46))).toBe(true);
  });

  it('not where soggy skin reaches round the nail to redness of the other fold', () => {
    const other = piece(31, 28, 34.5, 41);
    expect(joinedToFold(MARGIN, [SOGGY])(other)).toBe(false);
    const mirrored = { line: LINE.map(({ acrossMm, downMm }) => ({ acrossMm: 82 - acrossMm, downMm })), side: 'left' } as const;
    expect(joinedToFold(mirrored, [SOGGY])(other)).toBe(true);
  });

  it('nowhere without a margin', () => {
    expect(joinedToFold(null, [SOGGY])(SOGGY)).toBe(false);
  });
});
