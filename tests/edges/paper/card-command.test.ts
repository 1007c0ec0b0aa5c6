import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { parseGeometry } from '../../../lib/card/parse-geometry';
import { parseSerial } from '../../../lib/card/serial';
import { WrongUse, readCardRequest } from '../../../lib/commands/card-request';
import { writeWholeFile } from '../../../lib/edges/paper/write-whole-file';
import { drawBelow } from '../../../lib/edges/paper/draw-below';

const ROOT = path.resolve(import.meta.dirname, '..', '..', '..');
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'card-'));
});
afterAll(() => rmSync(folder, { recursive: true }));
const file = (name: string): string => path.join(folder, name);

interface Run {
  readonly code: number;
  readonly out: string;
  readonly said: string;
}

function card(...args: string[]): Promise<Run> {
  return new Promise((resolve) => {
    const command = ['--import', 'tsx', path.join('lib', 'commands', 'card.ts'), ...args];
    execFile(process.execPath, command, { cwd: ROOT }, (error, out, said) => {
      resolve({ code: error === null ? 0 : Number(error.code), out, said });
    });
  });
}

describe('the card command', () => {
  it('makes all its files and prints the serial', async () => {
    const run = await card('--paper', 'a4', '--out', file('a.pdf'), '--png', file('a.png'), '--px-per-mm', '12', '--svg', file('a.svg'), '--geometry', file('a.json'));
    expect(run).toMatchObject({ code: 0, said: '' });
    expect(parseSerial(run.out)).toHaveProperty('serial');
    expect(readFileSync(file('a.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    const png = await sharp(file('a.png')).metadata();
    // 85.60 · 12 = 1027.2 and 53.98 · 12 = 647.76; 12 px/mm is 304.8 dots an inch.
    expect([png.width, png.height, png.density]).toEqual([1027, 648, 305]);
    expect(readFileSync(file('a.svg'), 'utf8')).toContain('<svg');
    expect(parseGeometry(readFileSync(file('a.json'), 'utf8'))).toEqual({ geometry: OWN_CARD });
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('prints a given serial again, the same to the pixel, and another one otherwise', async () => {
    const again = ['--serial', '7k3qm-2xpav-c', '--px-per-mm', '6'];
    const runs = [await card('--png', file('b.png'), ...again), await card('--png', file('c.png'), ...again)];
    expect(runs.map((run) => run.out)).toEqual(['7K3QM-2XPAV-C\n', '7K3QM-2XPAV-C\n']);
    expect(readFileSync(file('b.png')).equals(readFileSync(file('c.png')))).toBe(true);
    const other = await card('--png', file('d.png'), '--px-per-mm', '6');
    expect(other.out).not.toBe(runs[0].out);
  });

  it('tells how it is used', async () => {
    const run = await card('--help');
    expect(run.code).toBe(0);
    for (const option of ['--paper', '--out', '--serial', '--png', '--px-per-mm', '--geometry']) expect(run.out).toContain(option);
  });

  it.each<[string[], string]>([
    [[], '--out card.pdf'],
    [['--paper', 'a5', '--out', 'x.pdf'], 'received "a5"'],
    [['--paper', 'toString', '--out', 'x.pdf'], 'received "toString"'],
    [['--out', 'x.pdf'], '--paper must be a4 or letter'],
    [['--papr', 'a4'], '--help'],
    [['card.pdf'], '--help'],
    [['--out'], '--help'],
    [['--png', 'x.png', '--px-per-mm', '1000'], 'received "1000"'],
    [['--png', 'x.png', '--px-per-mm', ' '], '--px-per-mm'],
    [['--paper', 'a4', '--out', 'x.pdf', '--serial', '7K3QM-2XPAV-D'], '--serial'],
    [['--png', 'x', '--geometry', 'x'], 'same file name'],
    [['--png', ''], 'name is empty'],
  ])('answers wrong use %j with one sentence', (args, part) => {
    expect(() => readCardRequest(args)).toThrow(WrongUse);
    expect(() => readCardRequest(args)).toThrow(part);
    expect(() => readCardRequest(args)).toThrow(/^[^\n]+[.]$/);
  });

  it.each<[string[], string]>([
    [['--paper', 'a5', '--out', 'x.pdf'], 'received "a5"'],
    [['--png', path.join('no', 'such', 'folder', 'x.png')], 'ENOENT'],
    [['--geometry', 'lib'], 'Cannot write lib'],
  ])('ends %j with exit code 2, says so and leaves no file', async (args, part) => {
    const run = await card(...args);
    expect(run).toMatchObject({ code: 2, out: '' });
    expect(run.said).toContain(part);
    expect(run.said.trim().split('\n')).toHaveLength(1);
    expect(readdirSync(ROOT).filter((name) => name === 'x.pdf' || name.endsWith('.part'))).toEqual([]);
  });
});

describe('writing a file', () => {
  it('replaces the old one whole', async () => {
    await writeWholeFile(file('note'), 'first');
    await writeWholeFile(file('note'), 'second');
    expect(readFileSync(file('note'), 'utf8')).toBe('second');
  });

  it('leaves the old one and nothing else when it fails', async () => {
    await writeWholeFile(file('kept'), 'old');
    const broken = { toString: () => 'not bytes' } as unknown as Uint8Array;
    await expect(writeWholeFile(file('kept'), broken)).rejects.toThrow();
    expect(readFileSync(file('kept'), 'utf8')).toBe('old');
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

describe('drawing random numbers', () => {
  it('gives whole numbers from 0 up to the limit, all of them in time', () => {
    const seen = new Set(Array.from({ length: 2000 }, () => drawBelow(32)));
    expect([...seen].sort((a, b) => a - b)).toEqual([...Array(32).keys()]);
  });
});
