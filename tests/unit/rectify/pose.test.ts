import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { TILT_LIMIT_DEG } from '../../../lib/rectify/constants';
import { fiducialCorners } from '../../../lib/rectify/fiducial-corners';
import { fitCard } from '../../../lib/rectify/fit-card';
import type { Homography } from '../../../lib/rectify/homography';
import { nailPlace } from '../../../lib/rectify/notch-frame';
import { cardPose } from '../../../lib/rectify/pose';
import { poseGates } from '../../../lib/rectify/pose-gates';
import { randomSource } from '../../phantom/random/random-source';
import { randomCamera } from './random-camera';
import { type CameraSpec, focalLength, imageFromCardOf, project } from './synthetic-camera';

const random = randomSource(31, 'pose');
const nail = nailPlace(OWN_CARD);
/** Phones: 24–28 mm equivalent (common practice), which fixes distance and scale together. */
function phone(tiltDeg: number): CameraSpec {
  const camera = randomCamera(random, 0);
  const focalPx = (random.between(24, 28) * Math.hypot(4032, 3024)) / Math.hypot(36, 24);
  return { ...camera, tiltDeg, distanceMm: focalPx / camera.pxPerMm, lookAt: nail };
}
const TILTS = [0, 5, 10, 15, 20, 25, 30, 35] as const;

/** The card as fitted from corners with noise, as a photo gives it. */
function noisyFit(camera: CameraSpec, noisePx: number): Homography {
  const found = OWN_CARD.fiducials.map((f) => ({
    id: f.id,
    cornersPx: fiducialCorners(f, 0).map((corner) => {
      const { row, column } = project(camera, corner);
      return { row: row + noisePx * random.normal(), column: column + noisePx * random.normal() };
    }),
  }));
  const fit = fitCard(found, OWN_CARD);
  if (!fit) throw new Error('the card was not fitted');
  return fit.imageFromCard;
}

describe('how the phone stood over the card', () => {
  it.each(TILTS)('is told from a known focal length: tilt %f° within 0.1°, distance within 0.5 %%', (tiltDeg) => {
    for (let i = 0; i < 10; i++) {
      const camera = phone(tiltDeg);
      const pose = cardPose(imageFromCardOf(camera), camera, focalLength(camera).equivalent35Mm, nail);
      // A rounded cosine next to 1 still leaves some 1e-6 degrees.
      expect(Math.abs(pose.tiltDeg - tiltDeg)).toBeLessThan(0.1);
      expect(Math.abs(pose.distanceMm / camera.distanceMm - 1)).toBeLessThan(0.005);
      expect(pose.focalFrom).toBe('file');
    }
  });

  it.each([20, 25, 30, 35])('is told from the perspective alone at %f° and says so', (tiltDeg) => {
    for (let i = 0; i < 10; i++) {
      const camera = phone(tiltDeg);
      const pose = cardPose(imageFromCardOf(camera), camera, null, nail);
      expect(pose.focalFrom).toBe('view');
      expect(Math.abs(pose.tiltDeg - tiltDeg)).toBeLessThan(0.1);
      expect(Math.abs(pose.distanceMm / camera.distanceMm - 1)).toBeLessThan(0.005);
    }
  });

  it('rests on a prior when the phone is level and the file is silent, and owns to a larger uncertainty', () => {
    for (let i = 0; i < 10; i++) {
      const camera = phone(3);
      const pose = cardPose(imageFromCardOf(camera), camera, null, nail);
      const told = cardPose(imageFromCardOf(camera), camera, focalLength(camera).equivalent35Mm, nail);
      expect(pose.focalFrom).toBe('prior');
      expect(pose.distanceRelativeU).toBeGreaterThan(told.distanceRelativeU);
      expect(Math.abs(pose.distanceMm / camera.distanceMm - 1)).toBeLessThan(2 * pose.distanceRelativeU);
    }
  });

  // A single small square has two poses that fit nearly as well, most of all from the front; the whole card has one.
  it.each([0, 5, 10, 15, 20, 25, 30])('does not jump with the noise of the corners at %f°', (tiltDeg) => {
    const camera = { ...phone(tiltDeg), pxPerMm: 10 };
    const { equivalent35Mm } = focalLength(camera);
    const tilts = Array.from({ length: 20 }, () => cardPose(noisyFit(camera, 0.15), camera, equivalent35Mm, nail).tiltDeg);
    // Seen from the front the tilt is a length of two small numbers and never below 0: noise shows as up to 1°.
    expect(Math.max(...tilts.map((tilt) => Math.abs(tilt - tiltDeg)))).toBeLessThan(tiltDeg === 0 ? 1.2 : 1);
    const decisions = tilts.map((tilt) => poseGates(tilt, 10, 0.2).length);
    expect(decisions).toEqual(new Array(20).fill(0));
  });

  it('refuses every noisy view at 37° and none at 33°', () => {
    for (const [tiltDeg, failed] of [[33, 0], [37, 1]] as const) {
      const camera = { ...phone(tiltDeg), pxPerMm: 10 };
      const { equivalent35Mm } = focalLength(camera);
      for (let i = 0; i < 20; i++) {
        const pose = cardPose(noisyFit(camera, 0.15), camera, equivalent35Mm, nail);
        expect(poseGates(pose.tiltDeg, 10, 0.2)).toHaveLength(failed);
      }
    }
  });
});

describe('the gates of how the photo was taken', () => {
  it('let a level, near and sharp photo pass, and one at the very limits', () => {
    expect(poseGates(12, 9, 0.2)).toEqual([]);
    expect(poseGates(TILT_LIMIT_DEG, 6, 0.35)).toEqual([]);
  });

  it('name tilt, with what was measured and its limit', () => {
    expect(poseGates(36, 9, 0.2)).toMatchObject([{ gate: 'tilt', measured: 36, limit: 35 }]);
  });

  it('speak of distance and not of blur where there are too few pixels', () => {
    expect(poseGates(10, 5, 0.5).map((one) => one.gate)).toEqual(['resolution']);
  });

  it('take an edge that cannot be judged for blur', () => {
    expect(poseGates(10, 9, null)).toMatchObject([{ gate: 'blur', measured: null, limit: 0.35 }]);
    expect(poseGates(10, 9, 0.36).map((one) => one.gate)).toEqual(['blur']);
  });
});
