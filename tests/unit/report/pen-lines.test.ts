import { describe, expect, it } from 'vitest';
import { invertHomography, type Homography, toCard } from '../../../lib/rectify/homography';
import { linePlaces } from '../../../lib/report/line-places';
import { penLines } from '../../../lib/report/pen-lines';
import { placeOnPicture } from '../../../lib/report/place-on-picture';

/** A card seen at a slant. */
const IMAGE_FROM_CARD: Homography = [12, 1.5, 300, -0.8, 11, 200, 0.0004, 0.0009, 1];
const CARD_FROM_IMAGE = invertHomography(IMAGE_FROM_CARD);
const RING = [
  [10, 20],
  [14, 20.5],
  [13, 26],
] as const;
const REDNESS = { erythema: [{ ring: RING, hole: false }] };

describe('pen lines', () => {
  it('lie upon the card in millimetres', () => {
    expect(penLines(REDNESS)).toEqual([{ name: 'erythema', path: 'M10.000 20.000L14.000 20.500L13.000 26.000Z' }]);
  });

  it('lie upon a picture where the card lies there: read back they have their millimetres again', () => {
    const [{ path }] = penLines(REDNESS, placeOnPicture(CARD_FROM_IMAGE));
    const points = [...path.matchAll(/([\d.]+) ([\d.]+)/g)].map(([, column, row]) => toCard(CARD_FROM_IMAGE, { column: Number(column), row: Number(row) }));
    expect(points).toHaveLength(RING.length);
    points.forEach(({ acrossMm, downMm }, at) => {
      // Written to a thousandth of a pixel.
      expect(acrossMm).toBeCloseTo(RING[at][0], 3);
      expect(downMm).toBeCloseTo(RING[at][1], 3);
    });
  });

  it('close around an area, stay open along the margin, and the redness lies on top', () => {
    const lines = penLines({ ...REDNESS, nailFoldMargin: [[0, 0], [5, 1]], raw: [{ ring: [[0, 0], [1, 0], [1, 1]], hole: false }] });
    expect(lines.map(({ name, path }) => [name, path.endsWith('Z')])).toEqual([['nailFoldMargin', false], ['raw', true], ['erythema', true]]);
  });

  it('are not drawn for what was not found', () => {
    for (const nothing of [null, {}, { erythema: null, raw: [], nailFoldMargin: null }]) expect(penLines(nothing)).toEqual([]);
  });
});

describe('the date', () => {
  it('stands below the most proximal point of the redness', () => {
    expect(linePlaces({ ...REDNESS, nailFoldMargin: [[0, 0], [5, 60]] }).dateAt).toEqual([13, 26]);
  });

  it('stands below the margin where there is no redness, and nowhere where there is neither', () => {
    expect(linePlaces({ erythema: null, nailFoldMargin: [[0, 0], [5, 60]] }).dateAt).toEqual([5, 60]);
    expect(linePlaces({}).dateAt).toBeNull();
  });
});
