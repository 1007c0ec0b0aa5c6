import { describe, expect, it } from 'vitest';
import { HOME_CARD } from '../../../lib/colour/card-knowledge';
import type { CardKnowledge } from '../../../lib/colour/card-knowledge';
import { knowledgeFromBaseline } from '../../../lib/colour/knowledge-from-baseline';
import { readCardColour } from '../../../lib/colour/read-card-colour';
import type { CardColour } from '../../../lib/colour/read-card-colour';
import { seededRandom } from '../../seeded-random';
import { evenLight, nominalPrinter, paperOf, readingsOf, srgbTone } from './simulate-card-photo';
import type { Scene } from './simulate-card-photo';

const SCENE: Scene = { printer: nominalPrinter, tone: srgbTone, lightAt: evenLight([1, 0.95, 0.8], 0.8), codeNoise: 0.5 };

function readOrThrow(scene: Scene, knowledge: CardKnowledge = HOME_CARD): CardColour {
  const random = seededRandom(41);
  const read = readCardColour(readingsOf(scene, random), paperOf(scene, random), knowledge);
  if ('unread' in read) throw new Error(read.unread);
  return read;
}

describe('reading a card’s colour', () => {
  it('finds the light of every patch relative to paper', () => {
    const { patches } = readOrThrow(SCENE);
    expect(patches.length).toBeGreaterThan(15);
    for (const { patch, light } of patches) {
      const [red, green, blue] = nominalPrinter(patch);
      expect(Math.abs(light.red - red)).toBeLessThan(0.03);
      expect(Math.abs(light.green - green)).toBeLessThan(0.03);
      expect(Math.abs(light.blue - blue)).toBeLessThan(0.03);
    }
  });

  it('says which kind of card it was and how far its greys are from what is expected', () => {
    const home = readOrThrow(SCENE);
    expect(home.kind).toBe('home');
    expect(home.residualDeltaE).toBeLessThan(2);
    expect(home.residualDeltaE).toBeGreaterThan(0);
    const clinic: CardKnowledge = { ...knowledgeFromBaseline(home), kind: 'clinic' };
    expect(readOrThrow(SCENE, clinic).kind).toBe('clinic');
  });

  it('shows a bad print by its residual', () => {
    const faded: Scene = { ...SCENE, printer: (patch) => nominalPrinter(patch).map((v, c) => 0.4 + 0.6 * v ** (0.7 + 0.3 * c)) as never };
    expect(readOrThrow(faded).residualDeltaE).toBeGreaterThan(5);
  });

  it('leaves out patches that are clipped or lie under a reflex', () => {
    const random = seededRandom(42);
    const readings = readingsOf(SCENE, random).map((reading) =>
      reading.patch.name === 'ramp3' ? { ...reading, clippedShare: 0.6 } : reading,
    );
    const read = readCardColour(readings, paperOf(SCENE, random), HOME_CARD);
    if ('unread' in read) throw new Error(read.unread);
    expect(read.patches.map(({ patch }) => patch.name)).not.toContain('ramp3');
  });

  it('refuses where too little bare paper is in view, and where all of it is clipped', () => {
    const random = seededRandom(43);
    const paper = paperOf(SCENE, random);
    expect(readCardColour([], paper.slice(0, 11), HOME_CARD)).toEqual({
      unread: 'tooFewPaperSpots',
      usableSpots: 11,
      neededSpots: 12,
    });
    const clipped = paper.map((spot) => ({ ...spot, code: [255, 255, 255] as const }));
    expect(readCardColour(readingsOf(SCENE, random), clipped, HOME_CARD)).toMatchObject({ usableSpots: 0 });
  });

  it('works from paper alone where every patch is covered', () => {
    const read = readCardColour([], paperOf(SCENE, seededRandom(44)), HOME_CARD);
    expect(read).toMatchObject({ residualDeltaE: null, tone: { curve: { gamma: 0, contrast: 0, shoulder: 0 } } });
  });
});
