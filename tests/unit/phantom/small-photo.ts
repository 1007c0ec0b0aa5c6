/** A phantom that is quick to render, for tests that look at what is in it and not at how fine it is. */
import { cleanSpec } from '../../phantom/fault-spec';
import type { Overrides } from '../../phantom/random-spec';
import type { PhantomSpec } from '../../phantom/phantom-spec';

/** A clean spec at 480 × 360 pixels that still shows the whole card. */
export const smallPhoto = (seed: number, overrides: Overrides = {}): PhantomSpec =>
  cleanSpec(seed, {
    ...overrides,
    card: overrides.card === null ? null : { face: 'stand-in', ...overrides.card },
    camera: { widthPx: 480, heightPx: 360, focal35Mm: 75, distanceMm: 260, rollDeg: 4, aimMm: [0, 0], orientationTag: 1, ...overrides.camera },
  });
