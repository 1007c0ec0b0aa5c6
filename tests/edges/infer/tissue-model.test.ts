import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { type TissueModel, tissueModel } from '../../../lib/edges/infer/tissue-model';
import { MODEL_CHANNELS, modelInput } from '../../../lib/segment/model-input';
import type { TissueFields } from '../../../lib/segment/segmentation';
import { randomColours } from './random-colours';

const SEGMENT = path.resolve(import.meta.dirname, '..', '..', '..', 'lib', 'segment');
const PYTHON = '/usr/bin/python3';
const hasNumPy = spawnSync(PYTHON, ['-c', 'import numpy']).status === 0;

const colours = randomColours();
let model: TissueModel;
beforeAll(async () => {
  model = await tissueModel();
});

const planesOf = ({ grid: _grid, ...planes }: TissueFields): Record<string, Float32Array> => planes;

describe('the tissue model', () => {
  it('is the very file that its card describes', () => {
    const card = JSON.parse(readFileSync(path.join(SEGMENT, 'weights', 'toe-tissue.json'), 'utf8')) as { sha256: string; bytes: number };
    const weights = readFileSync(path.join(SEGMENT, 'weights', 'toe-tissue.onnx'));
    expect(weights.length).toBe(card.bytes);
    expect(createHash('sha256').update(weights).digest('hex')).toBe(card.sha256);
  });

  it('is loaded once, however often it is asked for', async () => {
    expect(await tissueModel()).toBe(model);
  });

  it('answers any light with planes between 0 and 1, one value for every pixel of the map', async () => {
    const fields = await model.infer(colours);
    expect(fields.grid).toEqual(colours.grid);
    for (const [name, plane] of Object.entries(planesOf(fields))) {
      expect(plane.length, name).toBe(colours.red.length);
      expect(plane.every((value) => value >= 0 && value <= 1), name).toBe(true);
    }
  });

  it('answers the same light with the same planes, to the last bit', async () => {
    const [first, second] = [planesOf(await model.infer(colours)), planesOf(await model.infer(colours))];
    for (const name of Object.keys(first)) expect(Buffer.from(first[name].buffer).equals(Buffer.from(second[name].buffer)), name).toBe(true);
  });

  it('sees no toe where the photo shows nothing', async () => {
    const nothing = randomColours();
    for (const plane of [nothing.red, nothing.green, nothing.blue, nothing.seen]) plane.fill(0);
    const { toe } = await model.infer(nothing);
    expect(toe.reduce((sum, one) => sum + (one > 0.5 ? 1 : 0), 0) / colours.grid.pxPerMm ** 2).toBeLessThan(80);
  });

  it('refuses a map of another size', async () => {
    const { grid } = colours;
    await expect(model.infer({ ...colours, grid: { ...grid, widthPx: grid.heightPx, heightPx: grid.widthPx } })).rejects.toThrow(/352 × 448 pixels, received 448 × 352/);
  });
});

describe.skipIf(!hasNumPy)('what the model is fed with', () => {
  it('is what the training code made of the same light, channel by channel (NumPy, numbers out of training/features.py)', () => {
    const { widthPx, heightPx } = colours.grid;
    const planes = [colours.red, colours.green, colours.blue, Float32Array.from(colours.seen)].map((plane) => Buffer.from(plane.buffer));
    const script = path.join(import.meta.dirname, 'features.py');
    const bytes = execFileSync(PYTHON, [script, path.join(SEGMENT, 'training', 'features.py'), String(heightPx), String(widthPx)], {
      input: Buffer.concat(planes),
      maxBuffer: 1 << 26,
    });
    const expected = new Float32Array(new Uint8Array(bytes).buffer);
    const input = modelInput(colours, model.card);
    expect(input.length).toBe(expected.length);
    const pixels = widthPx * heightPx;
    for (let channel = 0; channel < MODEL_CHANNELS; channel++) {
      let farthest = 0;
      for (let i = channel * pixels; i < (channel + 1) * pixels; i++) farthest = Math.max(farthest, Math.abs(input[i] - expected[i]));
      // Single precision of numbers up to about 20.
      expect(farthest, `channel ${channel}`).toBeLessThan(2e-6);
    }
  });
});
