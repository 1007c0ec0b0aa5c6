import { describe, expect, it } from 'vitest';
import { buildScene } from '../../phantom/scene/build-scene';
import { skinToToe } from '../../phantom/scene/toe-surface';
import { labelMaps } from '../../phantom/truth/label-maps';
import { distanceToLineMm } from '../../phantom/truth/line-distance';
import { mapPoint } from '../../phantom/truth/fit-plane';
import { sceneTruth } from '../../phantom/truth/scene-truth';
import { areaOf } from '../../phantom/truth/zero-outline';
import type { RednessSpec } from '../../phantom/phantom-spec';
import { smallPhoto } from './small-photo';

const AT_FOLD: RednessSpec = { where: 'treatedFold', addedBloodShare: 0.025, widthMm: 4, edgeMm: 2, from: 0.1, to: 0.8, raggedness: 0.4, tongueMm: 0, spot: null };
const FAR_AWAY: RednessSpec = { ...AT_FOLD, where: 'elsewhere', widthMm: 2.5, spot: [31, 0] };
const CLEAN_WOUND = { rawShare: 0.9, macerationMm: 0, granulationMm: 0, driedBloodCount: 0, crustCount: 0 };

const scene = buildScene(smallPhoto(21, { wound: { ...CLEAN_WOUND, side: 'left', redness: [AT_FOLD, FAR_AWAY] } }));
const truth = sceneTruth(scene);
const outlines = truth.outlines!;
const measurements = truth.measurements!;

describe('the truth of a toe', () => {
  it('counts only redness that is joined to the treated fold', () => {
    expect(measurements.erythemaArea).toBeGreaterThan(20);
    expect(areaOf(outlines.erythema)).toBeCloseTo(measurements.erythemaArea, 9);
    expect(areaOf(outlines.erythemaSatellites)).toBeGreaterThan(5);
  });

  it('gives a larger area at a lower share of the plateau and a smaller one at a higher share', () => {
    const { erythemaArea, erythemaAreaAtLevels } = measurements;
    expect(erythemaAreaAtLevels['0.45']).toBeGreaterThan(erythemaArea);
    expect(erythemaAreaAtLevels['0.55']).toBeLessThan(erythemaArea);
  });

  it('gives the same areas by counting plumb lines as by its outlines', () => {
    const pxPerMm = 11;
    const [across, down] = scene.toe!.pose.origin;
    const grid = { originAcrossMm: across - 16, originDownMm: down - 2, pxPerMm, widthPx: 32 * pxPerMm, heightPx: 44 * pxPerMm };
    const labels = labelMaps(scene, grid);
    const counted = (mask: Uint8Array): number => mask.reduce((sum, value) => sum + value, 0) / pxPerMm ** 2;
    expect(Math.abs(counted(labels.raw) / measurements.rawArea - 1)).toBeLessThan(0.02);
    expect(Math.abs(counted(labels.nailPlate) / areaOf(outlines.nailPlate) - 1)).toBeLessThan(0.01);
    expect(Math.abs(counted(labels.erythema) / (measurements.erythemaArea + areaOf(outlines.erythemaSatellites)) - 1)).toBeLessThan(0.01);
  });

  it('puts the treated margin on the treated side', () => {
    const middle = scene.middleMm[0];
    expect(outlines.nailFoldMarginLateral.every(([x]) => x < middle)).toBe(true);
    expect(outlines.nailFoldMarginUntreated.slice(0, 100).every(([x]) => x > middle)).toBe(true);
  });

  it('measures reach as the farthest edge point from the margin', () => {
    const distances = outlines.erythema.flatMap(({ ring }) => ring.map((point) => distanceToLineMm(point, outlines.nailFoldMargin)));
    expect(measurements.reach).toBeCloseTo(Math.max(...distances), 1);
    expect(measurements.reachP95!).toBeLessThan(measurements.reach!);
  });

  it('finds the groove about as wide as the strip, seen from above', () => {
    const { stripMm } = scene.spec.wound;
    expect(measurements.grooveWidth).toBeGreaterThan(0.55 * stripMm);
    expect(measurements.grooveWidth).toBeLessThan(1.2 * stripMm);
    expect(measurements.grooveWidthMax).toBeGreaterThanOrEqual(measurements.grooveWidth);
  });

  it('lays the card at the wanted height over the lateral margins', () => {
    const { surface, pose } = scene.toe!;
    const heights = ([-1, 1] as const).flatMap((side) =>
      Array.from({ length: 50 }, (_, i) => pose.toCard(skinToToe(surface, surface.nail.marginPoint(side, (surface.nail.cornerShare * i) / 49)))[2]),
    );
    const mean = heights.reduce((sum, height) => sum + height, 0) / heights.length;
    expect(mean).toBeCloseTo(-truth.heightOffsetMm, 1);
  });

  it('says null, never zero, for the reach of no redness', () => {
    const { measurements: none } = sceneTruth(buildScene(smallPhoto(22, { wound: { ...CLEAN_WOUND, redness: [] } })));
    expect(none).toMatchObject({ erythemaArea: 0, reach: null, reachP95: null, proximalReach: null });
  });

  it('has a larger outline for wider redness and the same one for deeper redness', () => {
    const area = (change: Partial<RednessSpec>): number =>
      sceneTruth(buildScene(smallPhoto(21, { wound: { ...CLEAN_WOUND, side: 'left', redness: [{ ...AT_FOLD, ...change }] } }))).measurements!.erythemaArea;
    const plain = area({});
    expect(area({ widthMm: 5 })).toBeGreaterThan(plain + 5);
    expect(area({ addedBloodShare: 0.04 })).toBeCloseTo(plain, 6);
  });
});

describe('the truth of the card in the picture', () => {
  it('maps the corners of the fiducials back to millimetres', () => {
    const { fiducialCornersPx, homography } = truth.card;
    scene.face.geometry.fiducials.forEach(({ centre, sizeMm }, i) => {
      const [across, down] = mapPoint(homography, fiducialCornersPx[i][0]);
      expect(Math.abs(across - (centre.acrossMm - sizeMm / 2))).toBeLessThan(0.1);
      expect(Math.abs(down - (centre.downMm - sizeMm / 2))).toBeLessThan(0.1);
    });
  });

  it('is exact for a camera without distortion', () => {
    const straight = sceneTruth(buildScene(smallPhoto(23, { camera: { k1: 0, k2: 0, tiltDeg: 27 } }))).card;
    straight.checkPoints.imagePx.forEach((pixel, i) => {
      const [across, down] = mapPoint(straight.homography, pixel);
      expect(Math.hypot(across - straight.checkPoints.cardMm[i][0], down - straight.checkPoints.cardMm[i][1])).toBeLessThan(1e-6);
    });
  });

  it('keeps true millimetres when the card was printed too small', () => {
    const small = sceneTruth(buildScene(smallPhoto(24, { card: { printScale: 0.94 } })));
    expect(small.card.barReadsMm).toBeCloseTo(47, 9);
    const [a, b] = small.card.fiducialCornersPx[0].map((pixel) => mapPoint(small.card.homographyPinhole, pixel));
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(8.4 * 0.94, 1);
  });
});
