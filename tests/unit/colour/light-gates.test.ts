import { describe, expect, it } from 'vitest';
import { lightGates } from '../../../lib/colour/light-gates';
import { sortPaperSpots } from '../../../lib/colour/paper-spots';
import { fitShading } from '../../../lib/colour/shading';
import { toneTables } from '../../../lib/colour/tone-curve';
import { evenLight, nominalPrinter, paperOf, srgbTone } from './simulate-card-photo';
import type { Scene } from './simulate-card-photo';
import { seededRandom } from '../../seeded-random';

function gatesUnder(lightAt: Scene['lightAt']): readonly string[] {
  const spots = paperOf({ printer: nominalPrinter, tone: srgbTone, lightAt, codeNoise: 1 }, seededRandom(21));
  const { usable } = sortPaperSpots(spots);
  const shading = usable.length > 0 ? fitShading(usable, toneTables({ gamma: 0, contrast: 0, shoulder: 0 })) : null;
  return lightGates(spots, shading).map(({ gate }) => gate);
}

describe('the gates of light', () => {
  it.each([0.3, 0.6, 0.85])('let even light pass at an exposure of %d of the paper', (exposure) => {
    expect(gatesUnder(evenLight([1, 1, 1], exposure))).toEqual([]);
    expect(gatesUnder(evenLight([1, 0.85, 0.6], exposure))).toEqual([]);
  });

  it('refuse paper that is clipped nearly everywhere', () => {
    expect(gatesUnder(evenLight([1, 1, 1], 1.6))).toEqual(['clipped']);
  });

  it('refuse paper that is clipped in one channel only, since its colour is lost', () => {
    expect(gatesUnder(evenLight([1, 0.7, 0.5], 1.3))).toContain('clipped');
  });

  it('refuse a picture too dark for eight bits to hold skin', () => {
    expect(gatesUnder(evenLight([1, 1, 1], 0.04))).toEqual(['tooDark']);
  });

  it('pass a lamp to one side and refuse a shadow’s edge across the card', () => {
    const lamp: Scene['lightAt'] = ({ acrossMm }) => [0.8, 0.8, 0.8].map((v) => v * Math.exp(-acrossMm / 150)) as never;
    const edge: Scene['lightAt'] = ({ acrossMm, downMm }) => (acrossMm + downMm < 60 ? [0.8, 0.8, 0.8] : [0.4, 0.4, 0.42]);
    expect(gatesUnder(lamp)).toEqual([]);
    expect(gatesUnder(edge)).toEqual(['unevenLight']);
  });

  it('refuse smooth light that falls to a quarter across the card', () => {
    const steep: Scene['lightAt'] = ({ acrossMm }) => [0.9, 0.9, 0.9].map((v) => v * Math.exp(-acrossMm / 55)) as never;
    expect(gatesUnder(steep)).toEqual(['unevenLight']);
  });

  it('do not mistake a finger or the next toe on the card for a shadow', () => {
    const scene: Scene = { printer: nominalPrinter, tone: srgbTone, lightAt: evenLight([1, 1, 1], 0.8), codeNoise: 1 };
    const spots = paperOf(scene, seededRandom(22)).map((spot) =>
      spot.acrossMm > 60 && spot.downMm > 30 ? { ...spot, code: [190, 145, 125] as const } : spot,
    );
    const { usable } = sortPaperSpots(spots);
    expect(usable.length).toBeLessThan(spots.length);
    expect(lightGates(spots, fitShading(usable, toneTables({ gamma: 0, contrast: 0, shoulder: 0 })))).toEqual([]);
  });

  it('say what was measured, the limit and what to do', () => {
    const spots = paperOf({ printer: nominalPrinter, tone: srgbTone, lightAt: evenLight([1, 1, 1], 0.04), codeNoise: 0 }, seededRandom(1));
    const [reason] = lightGates(spots, null);
    expect(reason.measured).toBeCloseTo(56, 0);
    expect(reason.limit).toBe(80);
    expect(reason.advice).toMatch(/too dark/);
  });

  it('are silent where no paper was read: that is for the card’s own gates to say', () => {
    expect(lightGates([], null)).toEqual([]);
  });
});
