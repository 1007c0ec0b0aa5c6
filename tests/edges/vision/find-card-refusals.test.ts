import { beforeAll, describe, expect, it } from 'vitest';
import type { CardGeometry } from '../../../lib/card/card-geometry';
import { OWN_CARD } from '../../../lib/card/own-card';
import { detectFiducials } from '../../../lib/edges/vision/detect-fiducials';
import { openCv } from '../../../lib/edges/vision/open-cv';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { type CardSearch, type DetectFiducials, findCard } from '../../../lib/rectify/find-card';
import { toCard, toImage } from '../../../lib/rectify/homography';
import { type RandomSource, randomSource } from '../../phantom/random/random-source';
import { codeOf, paintedPhoto, photoOf } from '../../unit/rectify/photo-of';
import { type CameraSpec, imageFromCardOf, LEVEL_CAMERA } from '../../unit/rectify/synthetic-camera';
import { framed } from './card-view';
import { CLEAN, drawCardPhoto, type Face, ownFace } from './draw-card-photo';

let detect: DetectFiducials;
beforeAll(async () => {
  const { cv } = await openCv();
  detect = (image, dictionary) => detectFiducials(cv, image, dictionary);
});

const random = randomSource(71, 'refusals');
const camera = framed({ ...LEVEL_CAMERA, pxPerMm: 8, rollDeg: 6, tiltDeg: 14, azimuthDeg: 200 });
const draw = (face: Face, ground = 0.3, view: CameraSpec = camera): UprightPhoto =>
  drawCardPhoto(face, imageFromCardOf(view), view, { ...CLEAN, ground, noise: 0.02 }, random);
const reasonOf = (search: CardSearch): string => (search.found ? 'found' : search.reason.gate);

/** The face with some of its light replaced. */
function painted(face: Face, light: number, where: (acrossMm: number, downMm: number) => boolean): Face {
  return { ...face, light: face.light.map((old, i) => (where((i % face.widthPx) / face.pxPerMm, Math.floor(i / face.widthPx) / face.pxPerMm) ? light : old)) };
}

/** Skin-like fingers over some of the fiducials. */
const covered = (ids: readonly number[]): Face =>
  painted(ownFace(8), 0.35, (a, d) => OWN_CARD.fiducials.some(({ id, centre }) => ids.includes(id) && Math.hypot(a - centre.acrossMm, d - centre.downMm) < 5));

function mirrored(photo: UprightPhoto): UprightPhoto {
  const { widthPx, heightPx, srgb } = photo;
  return paintedPhoto(widthPx, heightPx, (row, column) => {
    const at = (row * widthPx + widthPx - 1 - column) * 3;
    return [srgb[at], srgb[at + 1], srgb[at + 2]];
  });
}

/** Largest distance between where the fit puts places and where they are, mm. */
function wrongByMm(search: CardSearch, view: CameraSpec): number {
  if (!search.found) return NaN;
  const { fit } = search;
  return Math.max(...[[10, 10], [75, 10], [42, 30], [10, 48], [75, 48]].map(([acrossMm, downMm]) => {
    const told = toCard(fit.cardFromImage, toImage(imageFromCardOf(view), { acrossMm, downMm }));
    return Math.hypot(told.acrossMm - acrossMm, told.downMm - downMm);
  }));
}

describe('a card that is there but cannot be used', () => {
  it('is called mirrored in a selfie, small or at twelve megapixels', () => {
    expect(reasonOf(findCard(mirrored(draw(ownFace(8))), OWN_CARD, detect))).toBe('mirrored');
    const far = { ...LEVEL_CAMERA, widthPx: 4032, heightPx: 3024, pxPerMm: 8, rollDeg: 4, tiltDeg: 10 };
    expect(reasonOf(findCard(mirrored(draw(ownFace(8), 0.3, far)), OWN_CARD, detect))).toBe('mirrored');
  });

  it('has too few fiducials when five of eight are covered, and says how many it showed', () => {
    const search = findCard(draw(covered([0, 1, 2, 22, 39])), OWN_CARD, detect);
    expect(search).toMatchObject({ found: false, reason: { gate: 'tooFewFiducials', measured: 3, limit: 4 } });
  });

  it('has too few fiducials when all of one side is covered', () => {
    expect(reasonOf(findCard(draw(covered([0, 2, 22, 39])), OWN_CARD, detect))).toBe('tooFewFiducials');
  });

  it('has too few fiducials when only the four beside the toe are seen: scale would be extrapolated', () => {
    expect(reasonOf(findCard(draw(covered([0, 1, 39, 46])), OWN_CARD, detect))).toBe('tooFewFiducials');
  });

  it('is the wrong card when it bears other ids of the same dictionary', () => {
    const others = [3, 4, 5, 7, 8, 9, 10, 11];
    const wanted: CardGeometry = { ...OWN_CARD, fiducials: OWN_CARD.fiducials.map((f, i) => ({ ...f, id: others[i] })) };
    expect(reasonOf(findCard(draw(ownFace(8)), wanted, detect))).toBe('wrongCard');
  });

  it('is the wrong card when the same ids stand in other places', () => {
    const ids = OWN_CARD.fiducials.map((f) => f.id);
    const wanted: CardGeometry = { ...OWN_CARD, fiducials: OWN_CARD.fiducials.map((f, i) => ({ ...f, id: ids[(i + 3) % 8] })) };
    expect(reasonOf(findCard(draw(ownFace(8)), wanted, detect))).toBe('wrongCard');
  });
});

describe('a card that is partly hidden or badly cut', () => {
  it('is still found with any three fiducials covered that leave both sides, within 0.1 mm', () => {
    for (const ids of [[0, 22, 46], [2, 6, 22], [39, 46, 0], [1, 36, 39]]) {
      const search = findCard(draw(covered(ids)), OWN_CARD, detect);
      expect(reasonOf(search), `${ids.join(' ')} covered`).toBe('found');
      expect(wrongByMm(search, camera), `${ids.join(' ')} covered`).toBeLessThan(0.1);
    }
  });

  it.each([0.02, 0.2, 0.9])('is found on a ground that reflects %f of the paper', (ground) => {
    expect(wrongByMm(findCard(draw(ownFace(8), ground), OWN_CARD, detect), camera)).toBeLessThan(0.05);
  });

  // Markers stand 3 mm, two modules, inside the card’s edge.
  it.each([[2, 1], [1.5, 1]])('is found on black ground when %f modules of white are left', (modules) => {
    const cutMm = 3 - 1.5 * modules;
    const cut = painted(ownFace(8), 0, (a, d) => a < cutMm || d < cutMm || a > 85.6 - cutMm || d > 53.98 - cutMm);
    expect(wrongByMm(findCard(draw(cut, 0.02), OWN_CARD, detect), camera)).toBeLessThan(0.05);
  });

  it.each([1, 0.5, 0])('is found rightly or refused, never measured wrongly, when %f modules of white are left on black', (modules) => {
    const cutMm = 3 - 1.5 * modules;
    const cut = painted(ownFace(8), 0, (a, d) => a < cutMm || d < cutMm || a > 85.6 - cutMm || d > 53.98 - cutMm);
    const search = findCard(draw(cut, 0.02), OWN_CARD, detect);
    if (search.found) expect(wrongByMm(search, camera)).toBeLessThan(0.1);
    else expect(['tooFewFiducials', 'cardNotFound']).toContain(search.reason.gate);
  });

  it('is found rightly or refused when glare wipes out one fiducial after another', () => {
    for (const { id, centre } of OWN_CARD.fiducials) {
      const glare = painted(ownFace(8), 1.2, (a, d) => Math.hypot((a - centre.acrossMm - 1.5) / 4, (d - centre.downMm) / 2.5) < 1);
      const search = findCard(draw(glare), OWN_CARD, detect);
      expect(reasonOf(search), `glare on ${id}`).toBe('found');
      expect(wrongByMm(search, camera), `glare on ${id}`).toBeLessThan(0.1);
    }
  });
});

type Paint = (row: number, column: number) => number;

/** Pictures without a card: what lies around in a home, and patterns that resemble markers. */
const WITHOUT_CARD: Readonly<Record<string, (from: RandomSource) => Paint>> = {
  blank: (from) => {
    const level = from.next();
    return () => level;
  },
  noise: (from) => () => from.next(),
  weave: (from) => {
    const [wide, high, turn] = [from.between(3, 20), from.between(3, 20), from.between(0, 1)];
    return (row, column) => 0.5 + 0.5 * Math.sin(row / high + turn * column) * Math.sin(column / wide);
  },
  tiles: (from) => {
    const [side, joint, dark, light] = [from.between(12, 60), from.between(1, 5), from.next() * 0.2, 0.3 + from.next() * 0.7];
    return (row, column) => (row % side < joint || column % side < joint ? dark : light);
  },
  chequers: (from) => {
    const side = from.between(4, 40);
    return (row, column) => (Math.floor(row / side) + Math.floor(column / side)) % 2;
  },
  // The hardest: framed random blocks, each a square that a reader of markers will try to decode.
  blocks: (from) => {
    const cell = from.whole(4, 9);
    const bits = Array.from({ length: 4096 }, () => (from.chance(0.5) ? 0.8 : 0.05));
    return (row, column) => {
      const [r, c] = [Math.floor(row / cell), Math.floor(column / cell)];
      const [inRow, inColumn] = [r % 8, c % 8];
      if (inRow === 7 || inColumn === 7 || inRow === 6 && inColumn === 7) return 0.8;
      if (inRow === 0 || inColumn === 0 || inRow === 5 || inColumn === 5) return inRow <= 5 && inColumn <= 5 ? 0.05 : 0.8;
      return inRow < 5 && inColumn < 5 ? bits[(r * 61 + c) & 4095] : 0.8;
    };
  },
};

describe('a picture without a card', () => {
  it.each(Object.keys(WITHOUT_CARD))('never has one: %s', (kind) => {
    for (let seed = 0; seed < 22; seed++) {
      const from = randomSource(seed, kind);
      const paint = WITHOUT_CARD[kind](from);
      const photo = paintedPhoto(320, 240, (row, column) => {
        const code = codeOf(paint(row, column));
        return [code, code, code];
      });
      expect(reasonOf(findCard(photo, OWN_CARD, detect)), `seed ${seed}`).not.toBe('found');
    }
  });

  it('says that the card cannot be seen', () => {
    expect(findCard(photoOf(400, 300, new Uint8Array(400 * 300 * 3).fill(140)), OWN_CARD, detect)).toMatchObject({ found: false, reason: { gate: 'cardNotFound' } });
  });
});
