import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { edgeSpreadMm } from '../../../lib/rectify/edge-spread';
import { fiducialCorners } from '../../../lib/rectify/fiducial-corners';
import { type CardFit, fitCard } from '../../../lib/rectify/fit-card';
import { toCard, toImage } from '../../../lib/rectify/homography';
import { refineCorners } from '../../../lib/rectify/refine-corners';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { erf } from './erf';
import { codeOf, paintedPhoto } from './photo-of';
import { type CameraSpec, imageFromCardOf, LEVEL_CAMERA } from './synthetic-camera';

/** Share of a blurred unit step that has risen at `mm` past the edge. */
const risen = (mm: number, sigmaMm: number): number => 0.5 * (1 + erf(mm / (sigmaMm * Math.SQRT2)));

/** Black squares on paper, each blurred by a Gaussian of its own width across and down: exact, without sampling. */
function squaresPhoto(camera: CameraSpec, sigmaAcrossMm: number, sigmaDownMm: number): { photo: UprightPhoto; fit: CardFit } {
  const h = imageFromCardOf(camera);
  const found = OWN_CARD.fiducials.map((f) => ({ id: f.id, cornersPx: fiducialCorners(f, 0).map((corner) => toImage(h, corner)) }));
  const fit = fitCard(found, OWN_CARD);
  if (!fit) throw new Error('the card was not fitted');
  const photo = paintedPhoto(camera.widthPx, camera.heightPx, (row, column) => {
    const { acrossMm, downMm } = toCard(fit.cardFromImage, { row, column });
    let light = 0.8;
    for (const { centre, sizeMm } of OWN_CARD.fiducials) {
      const [a, d] = [Math.abs(acrossMm - centre.acrossMm), Math.abs(downMm - centre.downMm)];
      if (a < sizeMm && d < sizeMm) light -= 0.76 * risen(sizeMm / 2 - a, sigmaAcrossMm) * risen(sizeMm / 2 - d, sigmaDownMm);
    }
    const code = codeOf(light);
    return [code, code, code];
  });
  return { photo, fit };
}

const spread = (camera: CameraSpec, across: number, down = across): number => {
  const { photo, fit } = squaresPhoto(camera, across, down);
  return edgeSpreadMm(photo, fit) ?? NaN;
};
/** 10–90 % of a Gaussian edge: twice the normal quantile of 0.9. */
const RISE = 2 * 1.28155;
const frame = (pxPerMm: number): CameraSpec => ({ ...LEVEL_CAMERA, pxPerMm, widthPx: Math.round(90 * pxPerMm), heightPx: Math.round(60 * pxPerMm) });

describe('the edge spread on the card', () => {
  it.each([
    [7, 0.12], [10, 0.07], [10, 0.13], [16, 0.06],
  ])('is 2.563 σ at %f px/mm for σ = %f mm, within 6 %%', (pxPerMm, sigmaMm) => {
    expect(Math.abs(spread({ ...frame(pxPerMm), rollDeg: 3 }, sigmaMm) / (RISE * sigmaMm) - 1)).toBeLessThan(0.06);
  });

  it('is the same length on the card whatever the turn and tilt of the phone', () => {
    for (const [rollDeg, tiltDeg] of [[12, 15], [45, 0], [3, 30]]) {
      const camera = { ...frame(9), widthPx: 940, heightPx: 940, rollDeg, tiltDeg, azimuthDeg: 30 };
      expect(Math.abs(spread(camera, 0.12) / (RISE * 0.12) - 1), `roll ${rollDeg}, tilt ${tiltDeg}`).toBeLessThan(0.08);
    }
  });

  it('is that of the blurrier direction when the camera shook one way', () => {
    expect(spread({ ...frame(9), rollDeg: 2 }, 0.06, 0.14) / (RISE * 0.14)).toBeCloseTo(1, 1);
    expect(spread({ ...frame(9), rollDeg: 2 }, 0.14, 0.06) / (RISE * 0.14)).toBeCloseTo(1, 1);
  });

  it('does not exist on an even surface', () => {
    const { fit } = squaresPhoto(frame(8), 0.1, 0.1);
    expect(edgeSpreadMm(paintedPhoto(720, 480, () => [120, 120, 120]), fit)).toBeNull();
  });
});

describe('fine corners', () => {
  // Nearly along the pixel grid an edge is read at few phases, which costs a little more.
  it.each([[0.3, 0.07], [7, 0.05], [45, 0.05], [200, 0.05]])('are the crossings of the printed edges, from corners 1.5 px off, turned by %f°: within %f px', (rollDeg, mostPx) => {
    const camera = { ...frame(10), widthPx: 1100, heightPx: 1100, rollDeg, tiltDeg: 12, azimuthDeg: 70 };
    const { photo, fit } = squaresPhoto(camera, 0.075, 0.075);
    for (const one of fit.used) {
      const coarse = { id: one.id, cornersPx: one.cornersPx.map((p, i) => ({ row: p.row + (i % 2 ? 1.1 : -1), column: p.column + (i > 1 ? 1 : -1.1) })) };
      const fine = refineCorners(photo, coarse);
      expect(fine).not.toBeNull();
      fine?.cornersPx.forEach((p, i) => {
        expect(Math.hypot(p.row - one.cornersPx[i].row, p.column - one.cornersPx[i].column), `fiducial ${one.id}`).toBeLessThan(mostPx);
      });
    }
  });

  it('do not exist on an even surface, outside the photo or for a square of a few pixels', () => {
    const { photo, fit } = squaresPhoto(frame(8), 0.1, 0.1);
    const even = paintedPhoto(720, 480, () => [120, 120, 120]);
    expect(refineCorners(even, fit.used[0])).toBeNull();
    const outside = { id: 0, cornersPx: fit.used[0].cornersPx.map((p) => ({ row: p.row - 400, column: p.column })) };
    expect(refineCorners(photo, outside)).toBeNull();
    const tiny = { id: 0, cornersPx: [[50, 50], [50, 54], [54, 54], [54, 50]].map(([row, column]) => ({ row, column })) };
    expect(refineCorners(photo, tiny)).toBeNull();
  });

  it('do not exist where an edge would have to jump farther than most of a cell', () => {
    const { photo, fit } = squaresPhoto(frame(10), 0.09, 0.09);
    const shifted = { id: 0, cornersPx: fit.used[0].cornersPx.map((p) => ({ row: p.row + 14, column: p.column + 14 })) };
    expect(refineCorners(photo, shifted)).toBeNull();
  });
});
