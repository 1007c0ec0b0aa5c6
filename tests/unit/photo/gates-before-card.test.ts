import { describe, expect, it } from 'vitest';
import { gatesBeforeCard } from '../../../lib/photo/gates-before-card';
import { GATE_ADVICE } from '../../../lib/photo/reasons';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { park } from './park-miller';

const capture: UprightPhoto['capture'] = {
  format: 'jpeg',
  localTime: '2026-03-02T19:32:31',
  utcOffset: '+01:00',
  focalLengthMm: null,
  focalLength35Mm: null,
  lensModel: null,
  digitalZoom: null,
  deviceClass: 'unknown',
  colourSpace: 'untagged',
  orientationTag: 1,
  hasGainMap: false,
};
const next = park(5);
const grainy = new Uint8Array(320 * 240 * 3).map(() => 120 + 10 * next());
const photo: UprightPhoto = { widthPx: 320, heightPx: 240, srgb: grainy, sha256: 'aa', capture };
const context = { receivedAt: '2026-03-03T08:00:00Z', knownSha256: new Set<string>() };

describe('the gates that need no card', () => {
  it('let a grainy photo of yesterday pass that came for the first time', () => {
    expect(gatesBeforeCard(photo, context)).toEqual([]);
  });

  it('name a drawing, with what was measured and the limit', () => {
    const drawn = { ...photo, srgb: new Uint8Array(grainy.length).fill(200) };
    expect(gatesBeforeCard(drawn, context)).toEqual([
      { gate: 'notAPhotograph', measured: 1, limit: 0.8, advice: GATE_ADVICE.notAPhotograph },
    ]);
  });

  it('name a file that came before, by its bytes', () => {
    const gates = gatesBeforeCard(photo, { ...context, knownSha256: new Set(['aa']) });
    expect(gates.map(({ gate }) => gate)).toEqual(['duplicate']);
  });

  it('name everything that is wrong, not only the first thing', () => {
    const worst = { ...photo, srgb: new Uint8Array(grainy.length), capture: { ...capture, localTime: '2019-01-05T10:00:00' } };
    const gates = gatesBeforeCard(worst, { ...context, knownSha256: new Set(['aa']) });
    expect(gates.map(({ gate }) => gate)).toEqual(['notAPhotograph', 'captureTime', 'duplicate']);
  });
});
