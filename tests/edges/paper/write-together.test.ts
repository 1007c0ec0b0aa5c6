import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { NotWritten, writeTogether } from '../../../lib/edges/paper/write-together';

let folder: string;
const file = (name: string) => path.join(folder, name);
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'foldwatch-together-'));
  writeFileSync(file('old'), 'before');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const asBefore = () => {
  expect(readdirSync(folder).filter((name) => name !== 'taken')).toEqual(['old']);
  expect(readFileSync(file('old'), 'utf8')).toBe('before');
};

describe('several files', () => {
  it('are all there, new ones and one that was there, and nothing beside them', async () => {
    await writeTogether([{ path: file('old'), content: 'after' }, { path: file('new'), content: new Uint8Array([65]) }]);
    expect(readdirSync(folder).sort()).toEqual(['new', 'old']);
    expect([readFileSync(file('old'), 'utf8'), readFileSync(file('new'), 'utf8')]).toEqual(['after', 'A']);
  });

  it.each([0, 1, 2])('are none of them there where the one in place %i cannot be written', async (place) => {
    const files = [{ path: file('old'), content: 'after' }, { path: file('new'), content: 'x' }];
    files.splice(place, 0, { path: path.join(folder, 'nowhere', 'x'), content: 'x' });
    await expect(writeTogether(files)).rejects.toThrow(NotWritten);
    asBefore();
  });

  it.each([0, 1, 2])('are none of them there where a folder stands in the way of the one in place %i, and it is named', async (place) => {
    mkdirSync(file('taken'));
    const files = [{ path: file('old'), content: 'after' }, { path: file('new'), content: 'x' }];
    files.splice(place, 0, { path: file('taken'), content: 'x' });
    await expect(writeTogether(files)).rejects.toMatchObject({ path: file('taken') });
    asBefore();
    expect(readdirSync(file('taken'))).toEqual([]);
  });
});
