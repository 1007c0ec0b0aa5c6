import { describe, expect, it } from 'vitest';
import { mirror, shrinkToGrey, toPhoto } from '../../../lib/rectify/grey-image';
import { randomSource } from '../../phantom/random/random-source';
import { paintedPhoto } from './photo-of';

describe('the small grey copy', () => {
  it.each([1, 2, 3, 4, 5])('shrunk %f times shows a ramp where the photo shows it, within a hundredth of a pixel', (shrink) => {
    // Green falls by 1 a row and 2 a column, so a grey value tells the place it was taken from.
    const photo = paintedPhoto(60, 60, (row, column) => [0, 60 + row + 2 * column, 255]);
    const image = shrinkToGrey(photo, shrink);
    expect([image.widthPx, image.heightPx]).toEqual([Math.floor(60 / shrink), Math.floor(60 / shrink)]);
    for (let row = 0; row < image.heightPx; row++) {
      for (let column = 0; column < image.widthPx; column++) {
        const place = toPhoto(image, { row, column });
        // With an even number of pixels averaged the mean lies on half values, which eight bits cut off.
        const error = image.grey[row * image.widthPx + column] - (60 + place.row + 2 * place.column);
        if (60 + place.row + 2 * place.column < 250) expect(Math.abs(error)).toBeLessThanOrEqual(shrink === 4 ? 1.5 : 0.5);
      }
    }
  });

  it('places points of any size of photo and copy to less than 0.01 px', () => {
    const random = randomSource(51, 'half pixels');
    for (let i = 0; i < 100; i++) {
      const shrink = random.whole(1, 8);
      const image = { widthPx: random.whole(10, 4032), heightPx: random.whole(10, 3024), grey: new Uint8Array(), shrink };
      // The corner of a copy's pixel is the corner of its block in the photo: −0.5 stays −0.5.
      expect(toPhoto(image, { row: -0.5, column: -0.5 })).toEqual({ row: -0.5, column: -0.5 });
      const point = { row: random.between(0, 3000), column: random.between(0, 4000) };
      const there = toPhoto(image, point);
      const back = { row: (there.row + 0.5) / shrink - 0.5, column: (there.column + 0.5) / shrink - 0.5 };
      expect(Math.hypot(back.row - point.row, back.column - point.column)).toBeLessThan(0.01);
    }
  });

  it('looks at green alone', () => {
    const image = shrinkToGrey(paintedPhoto(4, 4, () => [10, 140, 250]), 1);
    expect([...image.grey]).toEqual(new Array(16).fill(140));
  });

  it('makes a dim photo bright enough to search and leaves a bright one as it is', () => {
    const dim = shrinkToGrey(paintedPhoto(64, 64, (_, column) => (column < 32 ? [5, 5, 5] : [40, 40, 40])), 1);
    expect(Math.max(...dim.grey)).toBe(230);
    const bright = shrinkToGrey(paintedPhoto(64, 64, (_, column) => (column < 32 ? [5, 5, 5] : [200, 200, 200])), 1);
    expect(Math.max(...bright.grey)).toBe(200);
  });

  it('is itself again when mirrored twice, and left becomes right when mirrored once', () => {
    const image = shrinkToGrey(paintedPhoto(5, 3, (row, column) => [0, 130 + 10 * column + row, 0]), 1);
    expect([...mirror(image).grey.subarray(0, 5)]).toEqual([...image.grey.subarray(0, 5)].reverse());
    expect([...mirror(mirror(image)).grey]).toEqual([...image.grey]);
  });

  it.each([0, -1, 1.5, NaN])('refuses to be shrunk %f times', (shrink) => {
    expect(() => shrinkToGrey(paintedPhoto(4, 4, () => [0, 0, 0]), shrink)).toThrow(`received ${shrink}`);
  });
});
