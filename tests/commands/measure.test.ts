import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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
      ['erythemaArea', 'rednessLoad', 'reach', 'reachP95', 'proximalReach', 'unrolledArea', 'unrolledReach', 'rednessDeltaEi', 'rednessDeltaA', 'grooveWidth', 'grooveWidthMax', 'rawArea', 'maceratedArea', 'foldStripArea', 'rawBeyondMargin', 'rawRedShare', 'rawYellowShare', 'rawDarkShare', 'foldBulge', 'foldSeenShare'].sort(),
    );
    for (const one of Object.values<{ value: number; u: number; U: number; unit: string; notMeasured?: string }>(measurements)) {
      if (one.notMeasured) continue;
      expect(one.u).toBeGreaterThan(0);
      expect(one.U).toBeCloseTo(2 * one.u, 10);
      expect(one.unit).toMatch(/mm|EI|deltaA|%/);
    }
  });

  it('tells card, colour, budget and outlines', () => {
    const json = JSON.parse(ran.out);
    expect(Object.keys(json)).toEqual(expect.arrayContaining(['photo', 'methodVersion', 'measured', 'reasons', 'card', 'colour', 'measurements', 'budget', 'outlines']));
    for (const key of ['version', 'serial', 'fiducials', 'tiltDeg', 'distanceMm', 'pxPerMm', 'residualMm']) expect(json.card).toHaveProperty(key);
    for (const key of ['itaDeg', 'itaClass', 'contrastToNoise', 'cardKind', 'residualDeltaE']) expect(json.colour).toHaveProperty(key);
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
    // 44 mm of card at 18 pixels a millimetre; below 56 mm of picture lies the legend.
    expect(png.readUInt32BE(16)).toBe(792);
    expect(png.readUInt32BE(20)).toBeGreaterThan(56 * 18);
    expect(png.length).toBeGreaterThan(100_000);
  });
});

describe('photos with a fault', () => {
  it('are kept with the gate that belongs to the fault, and leave with 3', async () => {
    const { code, out } = await measure(path.join(SAMPLES, 'refused'), '--json', '-');
    expect(code).toBe(3);
    const { photos } = JSON.parse(readFileSync(path.join(SAMPLES, 'manifest.json'), 'utf8'));
    const results = JSON.parse(out);
    const inFolder = photos.map((one: { file: string }) => one.file).filter((file: string) => file.startsWith('refused/'));
    expect(results.map((json: { photo: string }) => `refused/${json.photo}`)).toEqual(inFolder.sort());
    for (const json of results) {
      const { truth } = photos.find((one: { file: string }) => one.file === `refused/${json.photo}`);
      // The original of the duplicate lies in another folder: alone it is a photo like any other.
      if (truth.expectedGate === 'duplicate') continue;
      expect(json.reasons.map((reason: { gate: string }) => reason.gate), json.photo).toContain(truth.expectedGate);
      expect(json.measured).toBe(false);
      for (const reason of json.reasons) expect(Object.keys(reason)).toEqual(['gate', 'measured', 'limit', 'advice']);
      for (const one of Object.values(json.measurements)) expect(one).toEqual({ notMeasured: 'gateFailed' });
    }
  });
});

describe('several photos', () => {
  const [original, copy] = [path.join(SAMPLES, 'measured', 'very-light-daylight.jpg'), path.join(SAMPLES, 'refused', 'duplicate.jpg')];
  const file = path.join(scratch, 'several.json');
  let ran: Ran;
  beforeAll(async () => {
    ran = await measure(original, copy, '--json', file, '--earlier', path.join(SAMPLES, 'measured', 'light-shade.jpg'));
  });

  it('print a table with one line each, under a heading and above the caution', () => {
    const [heading, first, second, caution] = ran.out.trim().split('\n');
    expect(heading).toMatch(/^photo .*redness mm².*reach mm.*groove mm/);
    expect(first).toMatch(/^very-light-daylight\.jpg .*\d+\.\d ± \d+\.\d/);
    expect(second).toMatch(/^duplicate\.jpg .*duplicate$/);
    expect(caution).toMatch(/^A measurement aid, not a diagnosis/);
  });

  it('leave with 3 when a photo comes twice: the second one is named a duplicate and not measured', () => {
    expect(ran.code).toBe(3);
    const [first, second] = JSON.parse(readFileSync(file, 'utf8'));
    expect(first.measured).toBe(true);
    expect(second.measured).toBe(false);
    expect(second.reasons.map((reason: { gate: string }) => reason.gate)).toEqual(['duplicate']);
  });

  it('show what changed since an earlier visit, each with the smallest change that can be seen', () => {
    const [{ changes }] = JSON.parse(readFileSync(file, 'utf8'));
    expect(changes.length).toBeGreaterThan(0);
    for (const change of changes) {
      expect(change.photo).toBe('light-shade.jpg');
      expect(change.smallestDetectable).toBeGreaterThan(0);
    }
  });
});

describe('wrong use and files that are no photos', () => {
  const SAMPLE = path.join(SAMPLES, 'measured', 'light-shade.jpg');
  const OTHER_TABLE = path.join(scratch, 'other-table.csv');
  beforeAll(() => writeFileSync(OTHER_TABLE, 'patch;light\nwhite;95\n'));

  it('tells how it is used, and leaves with 0', async () => {
    const { code, out, err } = await measure('--help');
    expect([code, err]).toEqual([0, '']);
    for (const option of ['--baseline', '--earlier', '--geometry', '--clinic-card', '--bar-mm', '--json', '--overlay']) expect(out).toContain(option);
  });

  it.each([
    ['no photo named', []],
    ['a file that is not there', ['nowhere.jpg']],
    ['an unknown option', ['nowhere.jpg', '--fast']],
    ['an option without its value', ['nowhere.jpg', '--json']],
    ['an overlay for two photos', [SAMPLE, SAMPLE, '--overlay', 'x.png']],
    ['a clinic card with another first line', [SAMPLE, '--clinic-card', OTHER_TABLE]],
    ['a result in a folder that is not there', [SAMPLE, '--json', path.join(scratch, 'none', 'x.json')]],
    ['a bar that is no number', [SAMPLE, '--bar-mm', 'abc']],
    ['a bar that no printer prints', [SAMPLE, '--bar-mm', '5']],
  ])('%s: one sentence, exit 2, no stack', async (_, words) => {
    const { code, err, out } = await measure(...words);
    expect(code).toBe(2);
    expect(err + out).not.toMatch(/\n\s+at /);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err.trim()).toMatch(/[.?]$/);
  });

  it('a JSON that cannot be written leaves no overlay behind, and an older one as it was', async () => {
    const folder = mkdtempSync(path.join(scratch, 'together-'));
    const kept = path.join(folder, 'kept.png');
    writeFileSync(kept, 'older');
    // A folder of that name: everything can be written beside it, and nothing in its place.
    const taken = path.join(folder, 'taken');
    mkdirSync(taken);
    for (const overlay of ['new.png', 'kept.png']) {
      const { code, err } = await measure(SAMPLE, '--json', taken, '--overlay', path.join(folder, overlay));
      expect([code, err.trim()]).toEqual([2, expect.stringMatching(/^Cannot write .*taken \(\w+\): .*\.$/)]);
    }
    expect((await measure(SAMPLE, '--json', path.join(folder, 'none', 'x.json'), '--overlay', path.join(folder, 'new.png'))).code).toBe(2);
    expect(readdirSync(folder).sort()).toEqual(['kept.png', 'taken']);
    expect(readdirSync(taken)).toEqual([]);
    expect(readFileSync(kept, 'utf8')).toBe('older');
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
