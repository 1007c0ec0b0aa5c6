import { describe, expect, it } from 'vitest';
import { MAX_PLAIN_SHARE } from '../../../lib/photo/constants';
import { plainShare } from '../../../lib/photo/plain-share';
import { park } from './park-miller';

type Paint = (row: number, column: number) => readonly [number, number, number];

function paint(colour: Paint, grain = 0, widthPx = 640, heightPx = 480) {
  const next = park(11);
  const srgb = new Uint8ClampedArray(widthPx * heightPx * 3);
  for (let row = 0; row < heightPx; row += 1) {
    for (let column = 0; column < widthPx; column += 1) {
      // Sum of three uniform numbers: close enough to the bell shape of sensor noise, standard deviation 1/2.
      const noise = () => (grain === 0 ? 0 : 2 * grain * (next() + next() + next() - 1.5));
      colour(row, column).forEach((code, i) => (srgb[(row * widthPx + column) * 3 + i] = code + noise()));
    }
  }
  return { widthPx, heightPx, srgb: new Uint8Array(srgb.buffer) };
}

const white: Paint = () => [255, 255, 255];
const toe: Paint = (row, column) => ((row - 240) ** 2 / 4 + (column - 320) ** 2 < 9000 ? [244, 200, 170] : [236, 238, 241]);
const gradient: Paint = (row, column) => [90 + row / 8, 80 + column / 10, 70];
const words: Paint = (row, column) => (row % 24 < 3 && column % 9 < 5 ? [0, 0, 0] : [255, 255, 255]);

describe('a picture that was drawn', () => {
  it.each([
    ['a toe of filled shapes', paint(toe)],
    ['a blank white page', paint(white)],
    ['a black picture', paint(() => [0, 0, 0])],
    ['one exact colour', paint(() => [120, 90, 80])],
    ['an exact gradient', paint(gradient)],
    ['words on white', paint(words)],
  ])('is plain nearly everywhere: %s', (_, picture) => {
    expect(plainShare(picture)).toBeGreaterThan(MAX_PLAIN_SHARE + 0.1);
  });
});

describe('a picture with grain', () => {
  it.each([
    ['a smooth wall', paint(() => [180, 178, 172], 1)],
    ['a smooth gradient', paint(gradient, 1)],
    ['a toe', paint(toe, 1.5)],
    ['a dark room', paint(() => [6, 6, 7], 1)],
    ['half of it clipped by the flash', paint((row) => (row < 240 ? [300, 300, 300] : [210, 190, 180]), 2)],
    ['set into a black frame', paint((row) => (row < 300 ? [-50, -50, -50] : [150, 120, 100]), 2)],
  ])('is hardly plain anywhere: %s', (_, picture) => {
    expect(plainShare(picture)).toBeLessThan(MAX_PLAIN_SHARE / 2);
  });
});

it('says nothing, and therefore 0, where every square is full of edges', () => {
  expect(plainShare(paint((row, column) => ((row + column) % 2 ? [255, 255, 255] : [0, 0, 0])))).toBe(0);
});
