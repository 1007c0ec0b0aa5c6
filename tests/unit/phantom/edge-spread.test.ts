import { describe, expect, it } from 'vitest';
import { edgeSpreadPx, soften } from '../../phantom/camera/blur';
import { randomSpec } from '../../phantom/random-spec';

const CAMERA = { ...randomSpec(1).camera, opticsBlurPx: 0.8, defocusPx: 0, motionPx: 0, motionDeg: 0 };
const SIZE = 64;

/** Standard deviation, px, of where the light of one bright point goes, along rows. */
function spreadAlongRowsPx(camera: typeof CAMERA): number {
  const rgb = new Float32Array(SIZE * SIZE * 3);
  const middle = SIZE / 2;
  rgb.fill(1, 3 * (middle * SIZE + middle), 3 * (middle * SIZE + middle) + 3);
  const soft = soften({ widthPx: SIZE, heightPx: SIZE, rgb }, camera).rgb;
  let [sum, squares] = [0, 0];
  for (let i = 0; i < SIZE * SIZE; i++) {
    const away = (i % SIZE) - middle;
    sum += soft[3 * i];
    squares += soft[3 * i] * away * away;
  }
  return Math.sqrt(squares / sum);
}

describe('the stated width of an edge', () => {
  it.each([
    ['optics alone', {}],
    ['a defocus of 1.4 px', { defocusPx: 1.4 }],
    ['a shake of 1.2 px, which moves the picture by two', { motionPx: 1.2 }],
    ['a shake of 5 px', { motionPx: 5 }],
  ])('is that of the picture as it is softened: %s', (_, changes) => {
    const camera = { ...CAMERA, ...changes };
    // 2.563 standard deviations from 10 to 90 %; the bell is cut off at 2.7, which takes two percent.
    expect(edgeSpreadPx(camera) / 2.563).toBeCloseTo(spreadAlongRowsPx(camera), 1);
    expect(Math.abs(edgeSpreadPx(camera) / 2.563 / spreadAlongRowsPx(camera) - 1)).toBeLessThan(0.04);
  });
});

describe('a photo that is to be a good one', () => {
  it('is neither softer than the gate allows nor are all its papers washed out, whatever the seed', () => {
    for (let seed = 0; seed < 300; seed++) {
      const { camera, card } = randomSpec(seed);
      const pxPerMm = (camera.focal35Mm * Math.hypot(camera.widthPx, camera.heightPx)) / (Math.hypot(36, 24) * camera.distanceMm);
      expect(edgeSpreadPx(camera) / (pxPerMm * Math.cos((camera.tiltDeg * Math.PI) / 180)), `seed ${seed}`).toBeLessThan(0.3);
      expect(camera.exposure * (card?.paperWhite ?? 0) * Math.max(...camera.whiteBalance, 1), `seed ${seed}`).toBeLessThan(0.94);
    }
  });
});
