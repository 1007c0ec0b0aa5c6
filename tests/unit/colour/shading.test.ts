import { describe, expect, it } from 'vitest';
import type { WhiteSample } from '../../../lib/colour/card-readings';
import { correctMap } from '../../../lib/colour/correct-map';
import { fieldAt, fitQuadraticField } from '../../../lib/colour/quadratic-field';
import { fitShading, paperLightAt } from '../../../lib/colour/shading';
import { toneTables } from '../../../lib/colour/tone-curve';
import type { PointMm } from '../../../lib/units';
import { evenLight, nominalPrinter, paperOf, srgbTone } from './simulate-card-photo';
import type { Scene } from './simulate-card-photo';
import { seededRandom } from '../../seeded-random';

const standard = toneTables({ gamma: 0, contrast: 0, shoulder: 0 });
const sceneUnder = (lightAt: Scene['lightAt']): Scene => ({ printer: nominalPrinter, tone: srgbTone, lightAt, codeNoise: 1 });
/** A lamp to the left: light falls by half over the card, and warms toward it. */
const lampLeft: Scene['lightAt'] = ({ acrossMm }) => {
  const fall = Math.exp((-0.7 * acrossMm) / 85.6);
  return [0.85 * fall ** 1.1, 0.8 * fall, 0.7 * fall ** 0.9];
};
const shadowEdge: Scene['lightAt'] = ({ acrossMm }) => (acrossMm < 40 ? [0.8, 0.8, 0.8] : [0.35, 0.36, 0.38]);
const spotsUnder = (lightAt: Scene['lightAt']): WhiteSample[] => paperOf(sceneUnder(lightAt), seededRandom(8));

describe('the light of bare paper', () => {
  it('is found within 2 % all over the card under a lamp to one side', () => {
    const shading = fitShading(spotsUnder(lampLeft), standard);
    for (const at of [{ acrossMm: 10, downMm: 10 }, { acrossMm: 43, downMm: 27 }, { acrossMm: 75, downMm: 45 }]) {
      const [red, green, blue] = lampLeft(at);
      const found = paperLightAt(shading, at);
      expect(Math.abs(found.red / red - 1)).toBeLessThan(0.02);
      expect(Math.abs(found.green / green - 1)).toBeLessThan(0.02);
      expect(Math.abs(found.blue / blue - 1)).toBeLessThan(0.02);
    }
    expect(shading.ratio).toBeGreaterThan(1.8);
    expect(shading.ratio).toBeLessThan(2.3);
    expect(shading.residual).toBeLessThan(0.03);
  });

  it('does not follow ink or fingers on a sixth of the spots', () => {
    const covered = spotsUnder(evenLight([1, 1, 1], 0.8)).map((spot, index) =>
      index % 6 === 0 ? { ...spot, code: [60, 55, 50] as const } : spot,
    );
    expect(Math.abs(paperLightAt(fitShading(covered, standard), { acrossMm: 40, downMm: 20 }).green / 0.8 - 1)).toBeLessThan(0.02);
  });

  it('leaves a large residual at the edge of a shadow', () => {
    expect(fitShading(spotsUnder(shadowEdge), standard).residual).toBeGreaterThan(0.15);
    expect(fitShading(spotsUnder(evenLight([1, 0.9, 0.8], 0.8)), standard).residual).toBeLessThan(0.03);
  });
});

describe('a smooth field', () => {
  it('is followed exactly where it is a quadratic', () => {
    const truth = ({ acrossMm, downMm }: PointMm) => 1 + 0.01 * acrossMm - 0.02 * downMm + 0.0003 * acrossMm * downMm;
    const samples = Array.from({ length: 80 }, (_, index) => {
      const at = { acrossMm: (index % 10) * 8, downMm: Math.floor(index / 10) * 6 };
      return { at, value: truth(at) };
    });
    const { field } = fitQuadraticField(samples, 0.02, 5);
    const between = { acrossMm: 33, downMm: 17 };
    expect(fieldAt(field, between)).toBeCloseTo(truth(between), 3);
  });

  it('cannot be fitted to nothing', () => {
    expect(() => fitQuadraticField([], 1, 1)).toThrow(/at least one sample is needed, received 0/);
  });
});

describe('correcting a map', () => {
  it('gives bare paper 1 in every pixel, as the field says it point by point', () => {
    const shading = fitShading(spotsUnder(lampLeft), standard);
    const grid = { originAcrossMm: -3, originDownMm: 2, pxPerMm: 4, widthPx: 340, heightPx: 200 };
    const light = Array.from({ length: grid.widthPx * grid.heightPx }, (_, index) =>
      paperLightAt(shading, {
        acrossMm: grid.originAcrossMm + (index % grid.widthPx) / grid.pxPerMm,
        downMm: grid.originDownMm + Math.floor(index / grid.widthPx) / grid.pxPerMm,
      }),
    );
    const plane = (channel: 'red' | 'green' | 'blue') => Float32Array.from(light, (value) => value[channel]);
    const seen = new Uint8Array(light.length).fill(1);
    const map = correctMap({ grid, red: plane('red'), green: plane('green'), blue: plane('blue'), seen }, shading);
    for (const corrected of [map.red, map.green, map.blue]) {
      for (let index = 0; index < corrected.length; index += 997) expect(corrected[index]).toBeCloseTo(1, 5);
      expect(corrected[corrected.length - 1]).toBeCloseTo(1, 5);
    }
    expect(map.seen).toBe(seen);
  });
});
