import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = path.resolve(import.meta.dirname, '..', '..');
const COMMAND = path.join(ROOT, 'lib', 'commands', 'measure.ts');
const SAMPLES = path.join(ROOT, 'sample-images');
const scratch = mkdtempSync(path.join(os.tmpdir(), 'foldwatch-measure-'));

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function measure(...words: string[]): Promise<Ran> {
  return new Promise((resolve) => {
    execFile(process.execPath, ['--import', 'tsx', COMMAND, ...words], { cwd: ROOT, maxBuffer: 1 << 26 }, (error, out, err) =>
      resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

afterAll(() => rmSync(scratch, { recursive: true, force: true }));

describe('measuring one photo', () => {
  let ran: Ran;
  const overlay = path.join(scratch, 'overlay.png');
  beforeAll(async () => {
    ran = await measure(path.join(SAMPLES, 'measured', 'light-warm-led.jpg'), '--bar-mm', '50', '--json', '-', '--overlay', overlay);
  });

  it('leaves with 0 and prints nothing but JSON', () => {
    expect(ran.err).toBe('');
    expect(ran.code).toBe(0);
    expect(JSON.parse(ran.out).measured).toBe(true);
  });

  it('gives every number with value, u, U = 2u and unit, or with a reason', () => {
    const { measurements } = JSON.parse(ran.out);
    expect(Object.keys(measurements).sort()).toEqual(
      ['erythemaArea', 'rednessLoad', 'reach', 'reachP95', 'proximalReach', 'unrolledArea', 'unrolledReach', 'rednessDeltaEi', 'rednessDeltaA', 'grooveWidth', 'grooveWidthMax', 'rawArea', 'maceratedArea'].sort(),
    );
    for (const one of Object.values<{ value: number; u: number; U: number; unit: string; notMeasured?: string }>(measurements)) {
      if (one.notMeasured) continue;
      expect(one.u).toBeGreaterThan(0);
      expect(one.U).toBeCloseTo(2 * one.u, 10);
      expect(one.unit).toMatch(/mm|EI|deltaA/);
    }
  });

  it('tells card, colour, budget and outlines', () => {
    const json = JSON.parse(ran.out);
    expect(json.card.homography).toHaveLength(9);
    expect(json.card.serial).toMatch(/^[0-9A-Z]{11}$/);
    expect(json.colour.cardKind).toBe('home');
    expect(Object.keys(json.budget.erythemaArea.terms)).toContain('printScale');
    for (const key of ['toe', 'nailPlate', 'nailFoldMargin', 'erythema', 'raw', 'macerated', 'referenceSkin']) expect(json.outlines).toHaveProperty(key);
  });

  it('finds redness near the truth, within three expanded uncertainties', () => {
    const { photos } = JSON.parse(readFileSync(path.join(SAMPLES, 'manifest.json'), 'utf8'));
    const { truth } = photos.find((one: { file: string }) => one.file === 'measured/light-warm-led.jpg');
    const { erythemaArea } = JSON.parse(ran.out).measurements;
    expect(Math.abs(erythemaArea.value - truth.measurements.erythemaArea)).toBeLessThan(3 * erythemaArea.U);
  });

  it('draws an overlay', () => {
    const png = readFileSync(overlay);
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    expect(png.readUInt32BE(16)).toBe(792);
  });
});

describe('photos with a fault', () => {
  it('are kept with the gate that belongs to the fault, and leave with 3', async () => {
    const { code, out } = await measure(path.join(SAMPLES, 'refused'), '--json', '-');
    expect(code).toBe(3);
    const { photos } = JSON.parse(readFileSync(path.join(SAMPLES, 'manifest.json'), 'utf8'));
    for (const json of JSON.parse(out)) {
      const { truth } = photos.find((one: { file: string }) => one.file === `refused/${json.photo}`);
      // The original of the duplicate lies in another folder: alone it is a photo like any other.
      if (truth.expectedGate === 'duplicate') continue;
      expect(json.reasons.map((reason: { gate: string }) => reason.gate), json.photo).toContain(truth.expectedGate);
      expect(json.measured).toBe(false);
      for (const one of Object.values(json.measurements)) expect(one).toEqual({ notMeasured: 'gateFailed' });
    }
  });
});

describe('wrong use and files that are no photos', () => {
  it.each([
    ['no photo named', []],
    ['a file that is not there', ['nowhere.jpg']],
    ['an unknown option', ['nowhere.jpg', '--fast']],
    ['a bar that is no number', [path.join(SAMPLES, 'measured', 'light-shade.jpg'), '--bar-mm', 'abc']],
    ['a bar that no printer prints', [path.join(SAMPLES, 'measured', 'light-shade.jpg'), '--bar-mm', '5']],
  ])('%s: one sentence, exit 2, no stack', async (_, words) => {
    const { code, err, out } = await measure(...words);
    expect(code).toBe(2);
    expect(err + out).not.toMatch(/\n\s+at /);
    expect(err.trim()).toMatch(/[.?]$/);
  });

  it('text named .jpg and a photo cut in half: a sentence, exit 2, nothing half-written', async () => {
    const text = path.join(scratch, 'text.jpg');
    const cut = path.join(scratch, 'cut.jpg');
    writeFileSync(text, 'no photo at all');
    const whole = readFileSync(path.join(SAMPLES, 'measured', 'light-shade.jpg'));
    writeFileSync(cut, whole.subarray(0, whole.length >> 1));
    const { code, out } = await measure(text, cut, '--json', path.join(scratch, 'result.json'));
    expect(code).toBe(2);
    expect(out).toContain('cannot be read');
    expect(JSON.parse(readFileSync(path.join(scratch, 'result.json'), 'utf8')).map((one: { unread: { id: string } }) => one.unread.id)).toEqual(['unsupportedFormat', 'truncated']);
    const bad = path.join(scratch, 'geometry.json');
    writeFileSync(bad, '{}');
    const second = await measure(text, '--geometry', bad, '--json', path.join(scratch, 'second.json'));
    expect(second.code).toBe(2);
    expect(existsSync(path.join(scratch, 'second.json'))).toBe(false);
    expect(readdirSync(scratch).filter((name) => name.includes('.part'))).toEqual([]);
  });
});
