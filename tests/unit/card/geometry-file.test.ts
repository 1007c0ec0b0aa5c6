import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { parseGeometry } from '../../../lib/card/parse-geometry';
import { writeGeometry } from '../../../lib/card/write-geometry';
import { hasSharedData, sharedFile } from '../../shared-data';

interface LooseFile {
  [field: string]: unknown;
  notch: [number, number][];
  fiducials: Record<string, unknown>[];
  patches: Record<string, unknown>[];
  qr: Record<string, unknown>;
}

/** What `parseGeometry` says of our own file after one thing in it was spoilt. */
function problemAfter(spoil: (file: LooseFile) => void): string {
  const file = JSON.parse(writeGeometry(OWN_CARD)) as LooseFile;
  spoil(file);
  const reading = parseGeometry(JSON.stringify(file));
  return 'problem' in reading ? reading.problem : 'no problem';
}

describe('the geometry file', () => {
  it('has the fields other programs rely on', () => {
    const file = JSON.parse(writeGeometry(OWN_CARD)) as LooseFile;
    expect(file).toMatchObject({ version: 'FW1', widthMm: 85.6, heightMm: 53.98, origin: 'top-left', anchor: 'centre', fiducialAnchor: 'centre', dictionary: 'DICT_4X4_50' });
    expect(Object.keys(file.fiducials[0])).toEqual(['id', 'xMm', 'yMm', 'sizeMm']);
    expect(Object.keys(file.patches[0])).toEqual(['name', 'kind', 'xMm', 'yMm', 'wMm', 'hMm', 'srgb']);
    expect(Object.keys(file.qr)).toEqual(['xMm', 'yMm', 'sizeMm']);
    expect(file.notch[0]).toHaveLength(2);
  });

  it('is refused with a sentence that names the wrong field', () => {
    expect(problemAfter((f) => delete f.widthMm)).toContain('widthMm');
    expect(problemAfter((f) => (f.widthMm = 1e9))).toContain('widthMm');
    expect(problemAfter((f) => (f.heightMm = -1))).toContain('heightMm');
    expect(problemAfter((f) => (f.fiducials[2].id = 'two'))).toContain('fiducials[2].id');
    expect(problemAfter((f) => (f.fiducials[2].id = 1.5))).toContain('fiducials[2].id');
    expect(problemAfter((f) => (f.fiducials[2].id = 0))).toContain('fiducials[2].id is 0 again');
    expect(problemAfter((f) => (f.fiducials[2].id = 50))).toContain('fiducials[2].id is 50, which DICT_4X4_50 does not have');
    expect(problemAfter((f) => (f.fiducials[1].sizeMm = 0))).toContain('fiducials[1].sizeMm');
    expect(problemAfter((f) => (f.fiducials[3].xMm = 84))).toContain('fiducials[3] does not lie on the card');
    expect(problemAfter((f) => (f.fiducials.length = 3))).toContain('fiducials');
    expect(problemAfter((f) => (f.fiducials[0].yMm = null))).toContain('fiducials[0].yMm');
    expect(problemAfter((f) => (f.notch[0][1] = 3))).toContain('notch[0]');
    expect(problemAfter((f) => (f.notch[5][0] = Number.NaN))).toContain('notch[5][0]');
    expect(problemAfter((f) => (f.notch.length = 2))).toContain('notch');
    expect(problemAfter((f) => (f.patches[1].xMm = 85))).toContain('patches[1] does not lie on the card');
    expect(problemAfter((f) => (f.patches[2].srgb = [1, 2]))).toContain('patches[2].srgb');
    expect(problemAfter((f) => (f.patches[2].srgb = [1, 2, 256]))).toContain('patches[2].srgb[2]');
    expect(problemAfter((f) => delete f.patches[3].srgb)).toContain('patches[3].srgb');
    expect(problemAfter((f) => delete f.patches[3].hMm)).toContain('patches[3].sizeMm');
    expect(problemAfter((f) => (f.dictionary = 'DICT_9X9_7'))).toContain('dictionary');
    expect(problemAfter((f) => (f.anchor = 'top-left'))).toContain('anchor');
    expect(problemAfter((f) => (f.qr.xMm = 84))).toContain('qr does not lie on the card');
    expect(problemAfter(() => undefined)).toBe('no problem');
  });

  it('is refused when it is not a card at all', () => {
    for (const text of ['', 'card', '{', '\u0000', 'null', '[]', '"x"', '7', '{}']) {
      expect(parseGeometry(text), text).toHaveProperty('problem');
    }
    expect(parseGeometry('')).toEqual({ problem: expect.stringContaining('not JSON') });
  });

  it('takes no property from a prototype and passes over fields it does not know', () => {
    const text = writeGeometry(OWN_CARD).replace('{', '{"__proto__": {"version": "evil"}, "paperWhite": 0.86,');
    expect(parseGeometry(text)).toEqual({ geometry: OWN_CARD });
    expect(({} as { version?: string }).version).toBeUndefined();
  });

  it('may have no patches, no code and no version', () => {
    const file = JSON.parse(writeGeometry(OWN_CARD)) as Partial<LooseFile>;
    for (const field of ['version', 'patches', 'qr', 'dictionary', 'origin', 'anchor', 'fiducialAnchor']) delete file[field];
    expect(parseGeometry(JSON.stringify(file))).toEqual({ geometry: { ...OWN_CARD, version: 'unnamed', patches: [], qr: null } });
  });
});

describe.skipIf(!hasSharedData('toe-phantoms'))('a card made by others', () => {
  it('is read: default dictionary, kinds of patches told from their colours', () => {
    const reading = parseGeometry(readFileSync(sharedFile('toe-phantoms', 'card.geometry.json'), 'utf8'));
    expect(reading).toMatchObject({ geometry: { widthMm: 85.6, heightMm: 53.98, dictionary: 'DICT_4X4_50', qr: null } });
    if ('problem' in reading) return;
    expect(reading.geometry.fiducials.map((f) => f.id)).toEqual([40, 41, 42, 43, 44, 45]);
    const kinds = reading.geometry.patches.map((p) => p.kind);
    expect([kinds.filter((k) => k === 'white').length, kinds.filter((k) => k === 'grey').length, kinds.filter((k) => k === 'colour').length]).toEqual([1, 9, 4]);
  });
});
