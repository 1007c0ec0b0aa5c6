/** Exact geometry as oracle for the terms of the budget: tilt, height above the card, curvature of the toe. */
import { describe, expect, it } from 'vitest';
import { sectionArc } from '../../../lib/measure/toe-section';
import { heightScaleError } from '../../../lib/measure/height-scale-error';
import { obliqueViewFactor } from '../../../lib/measure/oblique-view-factor';
import { signedAreaMm2 } from '../../../lib/measure/signed-area';
import { circleRing } from '../../unit/measure/shapes';

const cosine = (angleDeg: number): number => Math.cos((angleDeg * Math.PI) / 180);

describe('tilt of a flat patch, area × cos θ', () => {
  // Derived table, percent.
  const TILT = [
    [5, -0.38],
    [10, -1.52],
    [15, -3.41],
    [20, -6.03],
    [25, -9.37],
    [30, -13.4],
    [40, -23.4],
  ];

  it.each(TILT)('a disc tilted by %d° projects to an area %d %% off', (tiltDeg, percent) => {
    const disc = circleRing(0, 0, 5);
    const projected = disc.map(({ acrossMm, downMm }) => ({ acrossMm: acrossMm * cosine(tiltDeg), downMm }));
    expect((signedAreaMm2(projected) / signedAreaMm2(disc) - 1) * 100).toBeCloseTo(percent, 2);
  });

  it.each(TILT)('a camera that leans by %d° toward a patch that faces it undoes the cos of the card', (tiltDeg, percent) => {
    // Seen face on the patch keeps its area; the card's plane was stretched by 1 / cos θ, the projection shrinks by cos θ.
    const share = obliqueViewFactor(tiltDeg, tiltDeg) * cosine(tiltDeg) * cosine(tiltDeg);
    expect(share).toBeCloseTo(1, 12);
    expect((1 / (obliqueViewFactor(tiltDeg, tiltDeg) * cosine(tiltDeg)) - 1) * 100).toBeCloseTo(percent, 2);
  });

  it('skin turned away by as much as the camera leans the other way past 90° is not seen', () => {
    expect(obliqueViewFactor(-60, 30)).toBeCloseTo(0, 12);
  });
});

describe('skin above the card, D / (D − Δz) − 1', () => {
  // Derived table: distance, height, linear %, area %.
  const HEIGHT = [
    [150, 2, 1.35, 2.72],
    [150, 5, 3.45, 7.02],
    [150, 10, 7.14, 14.8],
    [150, 15, 11.11, 23.46],
    [200, 2, 1.01, 2.03],
    [200, 5, 2.56, 5.19],
    [200, 10, 5.26, 10.8],
    [200, 15, 8.11, 16.87],
    [250, 2, 0.81, 1.62],
    [250, 5, 2.04, 4.12],
    [250, 10, 4.17, 8.51],
    [250, 15, 6.38, 13.17],
    [300, 2, 0.67, 1.35],
    [300, 15, 5.26, 10.8],
    [400, 2, 0.5, 1.01],
    [400, 15, 3.9, 7.94],
  ];

  it.each(HEIGHT)('at %d mm, %d mm too high: lengths %d %%, areas %d %% too large', (distanceMm, heightMm, linear, area) => {
    const error = heightScaleError(heightMm, distanceMm);
    expect(Math.abs(error * 100 - linear)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(((1 + error) ** 2 - 1) * 100 - area)).toBeLessThanOrEqual(0.0051);
  });

  it('refuses a camera that is inside the toe', () => {
    expect(() => heightScaleError(15, 10)).toThrow(/received 10 and 15/);
  });
});

/** On a round toe. */
const arcMm = (offsetMm: number, radiusMm: number): number => radiusMm * sectionArc(ROUND, offsetMm / radiusMm);
const ROUND = { flatness: 1, squareness: 2 };

describe('arc on a cylinder against its chord 2R·sin(s / 2R)', () => {
  // Derived table: radius, arc centred on the top, chord error %.
  const CHORD = [
    [8, 5, -1.62],
    [8, 10, -6.38],
    [8, 15, -14.02],
    [8, 20, -24.08],
    [10, 5, -1.04],
    [10, 10, -4.11],
    [10, 15, -9.11],
    [10, 20, -15.85],
    [12, 5, -0.72],
    [12, 10, -2.87],
    [12, 15, -6.38],
    [12, 20, -11.18],
    [15, 5, -0.46],
    [15, 10, -1.84],
    [15, 15, -4.11],
    [15, 20, -7.24],
  ];

  it.each(CHORD)('R %d mm: the chord of a %d mm arc is %d %% short, and unrolling gives the arc back', (radius, arc, percent) => {
    const chord = 2 * radius * Math.sin(arc / (2 * radius));
    expect((chord / arc - 1) * 100).toBeCloseTo(percent, 2);
    const unrolled = arcMm(chord / 2, radius) - arcMm(-chord / 2, radius);
    expect(unrolled).toBeCloseTo(arc, 5);
  });

  it('gives back 5 mm of arc that starts 30° round a 10 mm toe and is seen 29.2 % short', () => {
    const start = 10 * Math.sin(Math.PI / 6);
    const end = 10 * Math.sin(Math.PI / 6 + 0.5);
    expect(((end - start) / 5 - 1) * 100).toBeCloseTo(-29.2, 1);
    expect(arcMm(end, 10) - arcMm(start, 10)).toBeCloseTo(5, 5);
  });
});
