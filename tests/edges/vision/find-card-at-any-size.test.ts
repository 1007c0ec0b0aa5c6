import { beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { cardCode } from '../../../lib/card/serial';
import { detectFiducials } from '../../../lib/edges/vision/detect-fiducials';
import { openCv } from '../../../lib/edges/vision/open-cv';
import { readCardQr } from '../../../lib/edges/vision/read-card-qr';
import { type DetectFiducials, findCard } from '../../../lib/rectify/find-card';
import type { CardFit } from '../../../lib/rectify/fit-card';
import { randomSource } from '../../phantom/random/random-source';
import { SAMPLE_SERIAL } from '../../unit/card/sample-drawing';
import { paintedPhoto } from '../../unit/rectify/photo-of';
import { type CameraSpec, imageFromCardOf, LEVEL_CAMERA } from '../../unit/rectify/synthetic-camera';
import { framed } from './card-view';
import { CLEAN, drawCardPhoto, ownFace } from './draw-card-photo';

let detect: DetectFiducials;
beforeAll(async () => {
  const { cv } = await openCv();
  detect = (image, dictionary) => detectFiducials(cv, image, dictionary);
});

const random = randomSource(81, 'sizes');
const photoFrom = (camera: CameraSpec) => drawCardPhoto(ownFace(camera.pxPerMm), imageFromCardOf(camera), camera, { ...CLEAN, noise: 0.01 }, random);

function fitFrom(camera: CameraSpec): CardFit {
  const search = findCard(photoFrom(camera), OWN_CARD, detect);
  if (!search.found) throw new Error(`not found: ${search.reason.gate}`);
  return search.fit;
}

describe('one scene at 1, 3 and 12 megapixels', () => {
  it('shows the same fiducials at the same corners, within half a pixel of the largest', () => {
    const large = { ...LEVEL_CAMERA, widthPx: 4000, heightPx: 3000, pxPerMm: 25, tiltDeg: 18, azimuthDeg: 40, rollDeg: 5 };
    const reference = fitFrom(large);
    expect(reference.used).toHaveLength(8);
    for (const [widthPx, heightPx] of [[2000, 1500], [1160, 870]]) {
      const scale = 4000 / widthPx;
      const fit = fitFrom({ ...large, widthPx, heightPx, pxPerMm: 25 / scale });
      for (const { id, cornersPx } of reference.used) {
        const same = fit.used.find((one) => one.id === id);
        expect(same, `fiducial ${id} at ${widthPx} px`).toBeDefined();
        same?.cornersPx.forEach((corner, i) => {
          const [row, column] = [(corner.row + 0.5) * scale - 0.5, (corner.column + 0.5) * scale - 0.5];
          expect(Math.hypot(row - cornersPx[i].row, column - cornersPx[i].column), `fiducial ${id} at ${widthPx} px`).toBeLessThan(0.5);
        });
      }
    }
  });

  it('is found when the card fills little of a large photo', () => {
    const far = { ...LEVEL_CAMERA, widthPx: 4032, heightPx: 3024, pxPerMm: 6, tiltDeg: 12, rollDeg: 95 };
    expect(fitFrom(far).used.length).toBeGreaterThanOrEqual(6);
  });
});

describe('the code on the card in a photo', () => {
  it.each([[7, 5], [10, 20], [18, 30]])('is read at %f px/mm and a tilt of %f°', (pxPerMm, tiltDeg) => {
    const camera = framed({ ...LEVEL_CAMERA, pxPerMm, tiltDeg, azimuthDeg: 130, rollDeg: 184 });
    const photo = photoFrom(camera);
    const search = findCard(photo, OWN_CARD, detect);
    expect(search.found && readCardQr(photo, search.fit, OWN_CARD)).toBe(cardCode(SAMPLE_SERIAL));
  });

  it('is not made up where there is none', () => {
    const camera = framed({ ...LEVEL_CAMERA, pxPerMm: 9 });
    const photo = photoFrom(camera);
    const fit = fitFrom(camera);
    expect(readCardQr(photo, fit, { ...OWN_CARD, qr: null })).toBeNull();
    expect(readCardQr(paintedPhoto(camera.widthPx, camera.heightPx, () => [180, 180, 180]), fit, OWN_CARD)).toBeNull();
  });
});
