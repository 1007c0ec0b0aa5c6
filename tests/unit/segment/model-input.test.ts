import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { toeGrid } from '../../../lib/rectify/toe-grid';
import { type ModelCard, modelInput } from '../../../lib/segment/model-input';
import type { ToeColours } from '../../../lib/segment/toe-colours';

const WEIGHTS = path.resolve(import.meta.dirname, '..', '..', '..', 'lib', 'segment', 'weights');
const card = JSON.parse(readFileSync(path.join(WEIGHTS, 'toe-tissue.json'), 'utf8')) as ModelCard;
const grid = toeGrid(OWN_CARD);
const pixels = grid.widthPx * grid.heightPx;

function colours(light: readonly [number, number, number]): ToeColours {
  const plane = (value: number) => new Float32Array(pixels).fill(value);
  return { grid, red: plane(light[0]), green: plane(light[1]), blue: plane(light[2]), seen: new Uint8Array(pixels).fill(1), erythemaIndex: plane(0) };
}

describe('the input of the tissue model', () => {
  it('is what training/features.py makes of the same light: offsets and scales of the model card, natural logarithms', () => {
    const input = modelInput(colours([0.5, 0.3, 0.2]), card);
    const at = (channel: number) => input[channel * pixels + 1000];
    // features.py: LOG_OFFSET −1.2, −1.7, −2.1; RATIO_OFFSET 0.5, 0.4; RATIO_SCALE 0.35.
    expect(at(0)).toBeCloseTo(Math.log(0.5) + 1.2, 5);
    expect(at(1)).toBeCloseTo(Math.log(0.3) + 1.7, 5);
    expect(at(2)).toBeCloseTo(Math.log(0.2) + 2.1, 5);
    expect(at(3)).toBeCloseTo((Math.log(0.5 / 0.3) - 0.5) / 0.35, 5);
    expect(at(4)).toBeCloseTo((Math.log(0.3 / 0.2) - 0.4) / 0.35, 5);
  });

  it('holds light within floor and ceiling, and is zero where the photo does not reach', () => {
    expect(modelInput(colours([9, 9, 0.0001]), card)[2 * pixels]).toBeCloseTo(Math.log(0.004) + 2.1, 5);
    const outside = modelInput(colours([0, 0, 0]), card);
    expect([0, 1, 2, 3, 4].map((channel) => outside[channel * pixels])).toEqual([0, 0, 0, 0, 0]);
  });

  it('runs from −1 to 1 across and down the map', () => {
    const input = modelInput(colours([0.5, 0.3, 0.2]), card);
    expect([input[6 * pixels], input[7 * pixels - 1], input[7 * pixels], input[8 * pixels - 1]]).toEqual([-1, 1, -1, 1]);
  });

  it('refuses a map of another size by name and size', () => {
    const small = { ...colours([0.5, 0.3, 0.2]), grid: { ...grid, widthPx: 100 } };
    expect(() => modelInput(small, card)).toThrow(/352 × 448.*100/);
  });
});
