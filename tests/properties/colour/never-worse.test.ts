import { describe, expect, it } from 'vitest';
import { HOME_CARD } from '../../../lib/colour/card-knowledge';
import { knowledgeFromBaseline } from '../../../lib/colour/knowledge-from-baseline';
import { seededRandom } from '../../seeded-random';
import { evenLight, FIVE_LIGHTS, nominalPrinter, randomTone } from '../../unit/colour/simulate-card-photo';
import type { Scene } from '../../unit/colour/simulate-card-photo';
import { correctedIndices, photograph, plainIndices, quantile, readColour, trueIndices } from './skin-in-photos';
import type { Photo } from './skin-in-photos';

const random = seededRandom(61);
const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
const truth = trueIndices();
const errorOf = (indices: readonly number[]): number => rootMeanSquare(indices.map((index, skin) => index - truth[skin]));

function scenes(count: number, lightOf: (exposure: number, light: readonly [number, number, number]) => Scene['lightAt']): Scene[] {
  return Array.from({ length: count }, (_, index) => ({
    printer: nominalPrinter,
    tone: randomTone(random),
    lightAt: lightOf(0.6 + 0.25 * random(), FIVE_LIGHTS[index % FIVE_LIGHTS.length]),
    codeNoise: 0.5,
  }));
}
const even = (exposure: number, light: readonly [number, number, number]) => evenLight(light, exposure);

/** Where plain values happen to be right the corrected ones may differ by the noise of reading a card. */
const NOISE_EI = 1;

function judge(what: string, photos: readonly Photo[], skinAt = { acrossMm: 42.8, downMm: 30 }): void {
  const plain = photos.map((photo) => errorOf(plainIndices(photo)));
  const corrected = photos.map((photo) => errorOf(correctedIndices(photo, readColour(photo, HOME_CARD), skinAt)));
  const worst = Math.max(...corrected.map((error, index) => error - plain[index]));
  console.info(
    `${what}: RMS error of the index, median ${quantile(plain, 0.5).toFixed(2)} plain, ` +
      `${quantile(corrected, 0.5).toFixed(2)} corrected; worst photo ${worst.toFixed(2)} EI worse than plain`,
  );
  expect(quantile(corrected, 0.5)).toBeLessThan(quantile(plain, 0.5));
  expect(worst).toBeLessThan(NOISE_EI);
}

/** Root mean square departure of the photos' indices from their mean, over all skins. */
function scatterOf(photos: readonly Photo[], indicesOf: (photo: Photo) => number[]): number {
  const all = photos.map(indicesOf);
  return rootMeanSquare(
    truth.flatMap((_, skin) => {
      const values = all.map((indices) => indices[skin]);
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return values.map((value) => value - mean);
    }),
  );
}

describe('correction by the card never makes the index worse than its own noise', () => {
  it('with a clean card', () => {
    judge('clean card', scenes(60, even).map((scene) => photograph(scene, random)));
  });

  it('with a clipped patch and a reflex on another', () => {
    const photos = scenes(60, even).map((scene) => {
      const photo = photograph(scene, random);
      const patches = photo.patches.map((reading) => {
        if (reading.patch.name === 'ramp2') return { ...reading, codeMedian: [255, 255, 255] as const, clippedShare: 1 };
        if (reading.patch.name === 'ramp5') return { ...reading, codeMedian: [190, 190, 190] as const, clippedShare: 0.1 };
        return reading;
      });
      return { ...photo, patches };
    });
    judge('clipped patch and reflex', photos);
  });

  it('in light that falls off along the row of greys, with skin on the dark side', () => {
    const gradient = (exposure: number, light: readonly [number, number, number]): Scene['lightAt'] => {
      const full = evenLight(light, exposure);
      return (at) => full(at).map((value) => value * Math.exp(-at.acrossMm / 120)) as never;
    };
    const skinAt = { acrossMm: 55, downMm: 35 };
    judge('gradient', scenes(60, gradient).map((scene) => photograph(scene, random, skinAt)), skinAt);
  });

  it('with a badly wrong printer: photos of one such card agree better than plain ones, far better with the first visit known', () => {
    const wrong: Scene['printer'] = (patch) => {
      const [red, green, blue] = nominalPrinter(patch);
      return [0.12 + 0.88 * red ** 1.4, 0.12 + 0.88 * green ** 1.3, 0.12 + 0.88 * blue ** 1.5];
    };
    const photos = scenes(40, even).map((scene) => photograph({ ...scene, printer: wrong }, random));
    const firstVisit = knowledgeFromBaseline(readColour(photos[0], HOME_CARD));
    const plain = scatterOf(photos, plainIndices);
    const alone = scatterOf(photos, (photo) => correctedIndices(photo, readColour(photo, HOME_CARD)));
    const known = scatterOf(photos, (photo) => correctedIndices(photo, readColour(photo, firstVisit)));
    console.info(
      `wrong printer: photos scatter by ${plain.toFixed(2)} EI plain, ${alone.toFixed(2)} corrected, ` +
        `${known.toFixed(2)} with the first visit known`,
    );
    expect(alone).toBeLessThan(plain);
    expect(known).toBeLessThan(plain / 2);
  });
});
