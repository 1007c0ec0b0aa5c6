/**
 * Closed forms of what a flat card makes of things that are tilted, raised or curved. The tables are computed from
 * cos θ, D / (D − Δz) and 2R·sin(s / 2R) to the printed digits; the formulas are textbook projective geometry.
 */
import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { invertHomography, pxPerMmAt, toCard } from '../../../lib/rectify/homography';
import { cardPose } from '../../../lib/rectify/pose';
import type { PointMm } from '../../../lib/units';
import { type CameraSpec, focalLength, imageFromCardOf, LEVEL_CAMERA, project } from '../../unit/rectify/synthetic-camera';

const between = (a: PointMm, b: PointMm): number => Math.hypot(a.acrossMm - b.acrossMm, a.downMm - b.downMm);

/** Where the card's map puts a point that lies above the card. */
function asOnCard(camera: CameraSpec, point: PointMm, heightMm: number): PointMm {
  return toCard(invertHomography(imageFromCardOf(camera)), project(camera, point, heightMm));
}

const TILT_BIAS_PERCENT = [[5, -0.38], [10, -1.52], [15, -3.41], [20, -6.03], [25, -9.37], [30, -13.4], [40, -23.4]] as const;

describe('a tilted card', () => {
  it.each(TILT_BIAS_PERCENT)('at %f° loses %f %% of its area in the picture, and none after rectification', (tiltDeg, percent) => {
    const camera = { ...LEVEL_CAMERA, tiltDeg, azimuthDeg: 25, distanceMm: 400 };
    const h = imageFromCardOf(camera);
    // pxPerMmAt looks half a millimetre each way; from 400 mm that is straight.
    const inPicture = (pxPerMmAt(h, camera.lookAt) / camera.pxPerMm) ** 2 - 1;
    expect(100 * inPicture).toBeCloseTo(percent, 1);
    expect(Math.cos((cardPose(h, camera, focalLength(camera).equivalent35Mm, camera.lookAt).tiltDeg * Math.PI) / 180) - 1).toBeCloseTo(percent / 100, 3);
    const corners = [[-5, -5], [5, -5], [5, 5], [-5, 5]].map(([a, d]) => asOnCard(camera, { acrossMm: 42.8 + a, downMm: 27 + d }, 0));
    expect(between(corners[0], corners[1]) * between(corners[1], corners[2])).toBeCloseTo(100, 6);
  });
});

/** [distance of the card, height above it, length error %, area error %] */
const HEIGHT_BIAS = [
  [150, 2, 1.35, 2.72], [150, 5, 3.45, 7.02], [150, 10, 7.14, 14.8], [150, 15, 11.11, 23.46],
  [200, 2, 1.01, 2.03], [200, 5, 2.56, 5.19], [200, 10, 5.26, 10.8], [200, 15, 8.11, 16.87],
  [250, 2, 0.81, 1.62], [250, 5, 2.04, 4.12], [250, 10, 4.17, 8.51], [250, 15, 6.38, 13.17],
  [300, 2, 0.67, 1.35], [300, 5, 1.69, 3.42], [300, 10, 3.45, 7.02], [300, 15, 5.26, 10.8],
  [400, 2, 0.5, 1.01], [400, 5, 1.27, 2.55], [400, 10, 2.56, 5.19], [400, 15, 3.9, 7.94],
] as const;

describe('a plane raised above the card, seen from the front', () => {
  it.each(HEIGHT_BIAS)('at %f mm, %f mm nearer, appears %f %% longer and %f %% larger', (distanceMm, heightMm, lengthPercent, areaPercent) => {
    const camera = { ...LEVEL_CAMERA, distanceMm, rollDeg: 20 };
    const corners = [[30, 20], [50, 20], [50, 40]].map(([acrossMm, downMm]) => asOnCard(camera, { acrossMm, downMm }, heightMm));
    const scale = between(corners[0], corners[1]) / 20;
    expect(scale).toBeCloseTo(distanceMm / (distanceMm - heightMm), 9);
    expect(100 * (scale - 1)).toBeCloseTo(lengthPercent, 1);
    expect((between(corners[0], corners[1]) * between(corners[1], corners[2])) / 4 - 100).toBeCloseTo(areaPercent, 1);
    expect(Math.abs(100 * (scale - 1) - lengthPercent)).toBeLessThan(0.0051);
  });
});

/** [radius, arc, error of the chord %] for an arc centred on the top of a cylinder, seen from far. */
const CHORD_BIAS = [
  [8, 5, -1.62], [8, 10, -6.38], [8, 15, -14.02], [8, 20, -24.08],
  [10, 5, -1.04], [10, 10, -4.11], [10, 15, -9.11], [10, 20, -15.85],
  [12, 5, -0.72], [12, 10, -2.87], [12, 15, -6.38], [12, 20, -11.18],
  [15, 5, -0.46], [15, 10, -1.84], [15, 15, -4.11], [15, 20, -7.24],
] as const;
/** Far enough that nearer and farther parts of a toe are of one scale. */
const FAR: CameraSpec = { ...LEVEL_CAMERA, distanceMm: 1e7 };
const onCylinder = (radiusMm: number, arcMm: number): PointMm =>
  asOnCard(FAR, { acrossMm: 42.8 + radiusMm * Math.sin(arcMm / radiusMm), downMm: 27 }, radiusMm * Math.cos(arcMm / radiusMm));

describe('an arc on a cylinder, seen from far', () => {
  it.each(CHORD_BIAS)('of radius %f mm: %f mm of arc is seen %f %% short', (radiusMm, arcMm, percent) => {
    const seen = between(onCylinder(radiusMm, -arcMm / 2), onCylinder(radiusMm, arcMm / 2));
    expect(Math.abs(100 * (seen / arcMm - 1) - percent)).toBeLessThan(0.0055);
  });

  it('that starts 30° round a 10 mm toe: 5 mm is seen 29.2 % short', () => {
    const from = (30 * Math.PI * 10) / 180;
    const seen = between(onCylinder(10, from), onCylinder(10, from + 5));
    expect(Math.abs(100 * (seen / 5 - 1) + 29.2)).toBeLessThan(0.1);
  });
});

describe('the card’s own size', () => {
  it('comes back from any view of its four corners: ISO/IEC 7810 ID-1, 85.60 × 53.98 mm', () => {
    const camera = { ...LEVEL_CAMERA, tiltDeg: 30, azimuthDeg: 77, rollDeg: 130, distanceMm: 180 };
    const corner = (acrossMm: number, downMm: number): PointMm => asOnCard(camera, { acrossMm, downMm }, 0);
    expect(between(corner(0, 0), corner(OWN_CARD.widthMm, 0))).toBeCloseTo(85.6, 6);
    expect(between(corner(0, 0), corner(0, OWN_CARD.heightMm))).toBeCloseTo(53.98, 6);
  });
});
