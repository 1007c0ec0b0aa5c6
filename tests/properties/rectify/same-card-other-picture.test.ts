import { beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { detectFiducials } from '../../../lib/edges/vision/detect-fiducials';
import { openCv } from '../../../lib/edges/vision/open-cv';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { edgeSpreadMm } from '../../../lib/rectify/edge-spread';
import { type DetectFiducials, findCard } from '../../../lib/rectify/find-card';
import { type CardFit, fitCard } from '../../../lib/rectify/fit-card';
import { toCard, toImage } from '../../../lib/rectify/homography';
import type { PointMm, PointPx } from '../../../lib/units';
import { framed } from '../../edges/vision/card-view';
import { CLEAN, drawCardPhoto, ownFace } from '../../edges/vision/draw-card-photo';
import { discAreaMm2 } from '../../edges/vision/disc-area';
import { randomSource } from '../../phantom/random/random-source';
import { paintedPhoto } from '../../unit/rectify/photo-of';
import { imageFromCardOf, LEVEL_CAMERA } from '../../unit/rectify/synthetic-camera';

const camera = framed({ ...LEVEL_CAMERA, pxPerMm: 10, tiltDeg: 17, azimuthDeg: 60, rollDeg: 7 });
const h = imageFromCardOf(camera);
let photo: UprightPhoto;
let fit: CardFit;
let detect: DetectFiducials;

function fitOf(picture: UprightPhoto): CardFit {
  const search = findCard(picture, OWN_CARD, detect);
  if (!search.found) throw new Error(`not found: ${search.reason.gate}`);
  return search.fit;
}

beforeAll(async () => {
  const { cv } = await openCv();
  detect = (image, dictionary) => detectFiducials(cv, image, dictionary);
  photo = drawCardPhoto(ownFace(10), h, camera, { ...CLEAN, noise: 0.015 }, randomSource(91));
  fit = fitOf(photo);
});

/** The photo with every pixel taken from another place of it. */
function rearranged(widthPx: number, heightPx: number, from: (row: number, column: number) => PointPx): UprightPhoto {
  return paintedPhoto(widthPx, heightPx, (row, column) => {
    const place = from(row, column);
    const at = (place.row * photo.widthPx + place.column) * 3;
    return place.row < 0 || place.column < 0 || place.row >= photo.heightPx || place.column >= photo.widthPx
      ? [90, 90, 90]
      : [photo.srgb[at], photo.srgb[at + 1], photo.srgb[at + 2]];
  });
}

const PLACES: PointMm[] = [[10, 10], [75, 10], [42.8, 29], [30, 45], [55, 45]].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));

/** Largest disagreement, mm, between this picture's card and the first one's about where places are. */
function disagreementMm(other: CardFit, moved: (p: PointPx) => PointPx): number {
  return Math.max(...PLACES.map((place) => {
    const told = toCard(other.cardFromImage, moved(toImage(fit.imageFromCard, place)));
    return Math.hypot(told.acrossMm - place.acrossMm, told.downMm - place.downMm);
  }));
}

describe('the card in the same picture', () => {
  it('turned by 90°, 180° and 270° gives the same millimetres', () => {
    const { widthPx: w, heightPx: t } = photo;
    const turns = [
      { size: [t, w], from: (row: number, column: number) => ({ row: t - 1 - column, column: row }), to: (p: PointPx) => ({ row: p.column, column: t - 1 - p.row }) },
      { size: [w, t], from: (row: number, column: number) => ({ row: t - 1 - row, column: w - 1 - column }), to: (p: PointPx) => ({ row: t - 1 - p.row, column: w - 1 - p.column }) },
      { size: [t, w], from: (row: number, column: number) => ({ row: column, column: w - 1 - row }), to: (p: PointPx) => ({ row: w - 1 - p.column, column: p.row }) },
    ];
    for (const { size, from, to } of turns) {
      const picture = rearranged(size[0], size[1], from);
      const turned = fitOf(picture);
      expect(disagreementMm(turned, to)).toBeLessThan(0.005);
      expect(discAreaMm2(picture, turned.imageFromCard) / discAreaMm2(photo, fit.imageFromCard)).toBeCloseTo(1, 3);
      expect((edgeSpreadMm(picture, turned) ?? 0) / (edgeSpreadMm(photo, fit) ?? 1)).toBeCloseTo(1, 1);
    }
  });

  it('twice as large, each pixel four, gives the same millimetres', () => {
    const larger = fitOf(rearranged(photo.widthPx * 2, photo.heightPx * 2, (row, column) => ({ row: row >> 1, column: column >> 1 })));
    expect(disagreementMm(larger, (p) => ({ row: 2 * p.row + 0.5, column: 2 * p.column + 0.5 }))).toBeLessThan(0.02);
  });

  it('moved to another place of a larger picture gives the same millimetres', () => {
    for (const [down, across] of [[0, 37], [53, 0], [101, 211]]) {
      const moved = fitOf(rearranged(photo.widthPx + 230, photo.heightPx + 120, (row, column) => ({ row: row - down, column: column - across })));
      expect(disagreementMm(moved, (p) => ({ row: p.row + down, column: p.column + across }))).toBeLessThan(0.005);
    }
  });

  it('gives the same plane in whatever order its fiducials were found', () => {
    const random = randomSource(92);
    for (let i = 0; i < 5; i++) {
      const shuffled = fit.used.map((one) => ({ one, at: random.next() })).sort((a, b) => a.at - b.at).map(({ one }) => one);
      const again = fitCard(shuffled, OWN_CARD);
      expect(again).not.toBeNull();
      if (again) expect(disagreementMm(again, (p) => p)).toBeLessThan(1e-6);
      expect(again?.insetMm).toBeCloseTo(fit.insetMm, 9);
    }
  });

  it('searched twice gives the very same numbers', () => {
    expect(fitOf(photo)).toEqual(fit);
  });
});
