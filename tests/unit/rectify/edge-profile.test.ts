import { describe, expect, it } from 'vitest';
import { greenLightAt, halfLevelCrossing, riseDistancePx, sampleEdgeProfile } from '../../../lib/rectify/edge-profile';
import { LINEAR_LIGHT } from '../../../lib/rectify/linear-light';
import { erf } from './erf';
import { paintedPhoto } from './photo-of';

const profileOf = (light: readonly number[], stepPx = 1) => ({ light: Float64Array.from(light), stepPx, halfLengthPx: ((light.length - 1) / 2) * stepPx });
/** A step from 0.05 to 0.8 blurred by a Gaussian, its middle at `at`. */
const blurredStep = (sigmaPx: number, at: number) =>
  profileOf(Array.from({ length: 65 }, (_, i) => 0.05 + 0.375 * (1 + erf(((i - 32) * 0.25 - at) / (sigmaPx * Math.SQRT2)))), 0.25);

describe('the half-level crossing of an edge', () => {
  it.each([-2.3, -0.6, 0, 0.4, 1.7])('lies where the blurred step has its middle, %f px', (at) => {
    for (const sigmaPx of [0.6, 1, 1.5]) expect(halfLevelCrossing(blurredStep(sigmaPx, at))).toBeCloseTo(at, 1);
  });

  it('is the worked example of its documentation', () => {
    expect(halfLevelCrossing(profileOf([0, 0, 1, 1]))).toBeCloseTo(0, 12);
  });

  it('does not exist where there is no contrast', () => {
    expect(halfLevelCrossing(profileOf(new Array(21).fill(0.4)))).toBeNull();
    expect(halfLevelCrossing(profileOf([0.4, 0.4, 0.42, 0.45, 0.5, 0.5]))).toBeNull();
  });

  it('does not exist where the light falls instead of rising', () => {
    expect(halfLevelCrossing(profileOf([1, 1, 1, 0.5, 0, 0, 0]))).toBeNull();
  });

  it('does not exist where two edges compete', () => {
    expect(halfLevelCrossing(profileOf([0, 0, 0, 1, 1, 0, 0, 1, 1, 1]))).toBeNull();
  });
});

describe('the distance over which an edge rises from 10 to 90 %', () => {
  it.each([0.8, 1.2, 2])('is 2.563 σ for a Gaussian blur of %f px', (sigmaPx) => {
    // The normal quantile of 0.9 is 1.28155.
    expect((riseDistancePx(blurredStep(sigmaPx, 0.2)) ?? 0) / (2 * 1.28155 * sigmaPx)).toBeCloseTo(1, 1.5);
  });

  it('is the worked example of its documentation', () => {
    expect(riseDistancePx(profileOf([0, 0, 0, 0.5, 1, 1, 1]))).toBeCloseTo(1.6, 12);
  });

  it('does not exist for an even surface or an edge that falls', () => {
    expect(riseDistancePx(profileOf(new Array(9).fill(0.3)))).toBeNull();
    expect(riseDistancePx(profileOf([1, 1, 1, 0.5, 0, 0, 0]))).toBeNull();
  });
});

describe('light between pixel centres', () => {
  const photo = paintedPhoto(6, 5, (row, column) => [255, 10 * row + 20 * column, 0]);

  it('is the pixel’s own at its centre and the mean of neighbours half way, in linear light', () => {
    expect(greenLightAt(photo, 2, 3)).toBeCloseTo(LINEAR_LIGHT[80], 6);
    expect(greenLightAt(photo, 2, 2.5)).toBeCloseTo((LINEAR_LIGHT[60] + LINEAR_LIGHT[80]) / 2, 6);
  });

  it('does not exist outside the photo', () => {
    for (const [row, column] of [[-0.1, 2], [2, -0.1], [4.2, 2], [2, 5.2]]) expect(greenLightAt(photo, row, column)).toBeNull();
    expect(sampleEdgeProfile(photo, { row: 2, column: 2 }, { row: 0, column: 1 }, 4, 0.5)).toBeNull();
  });

  it('is taken along the way asked for', () => {
    const profile = sampleEdgeProfile(photo, { row: 2, column: 2 }, { row: 0, column: 1 }, 1, 0.5);
    expect(profile?.light).toHaveLength(5);
    expect(profile?.light[0]).toBeCloseTo(LINEAR_LIGHT[40], 6);
    expect(profile?.light[4]).toBeCloseTo(LINEAR_LIGHT[80], 6);
  });
});
