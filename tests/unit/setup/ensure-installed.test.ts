import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isDriverBuilt, missingPackages } from '../../../lib/commands/ensure-installed.mjs';

let root = '';

beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), 'installed-'));
  mkdirSync(path.join(root, 'node_modules'));
});

afterEach(() => {
  rmSync(root, { recursive: true });
});

const write = (file: string, packages: object) => {
  writeFileSync(path.join(root, file), JSON.stringify({ packages }));
};
const WANTED = {
  '': {},
  'node_modules/zod': { version: '4.0.0' },
  'node_modules/only-on-mac': { version: '1.0.0', optional: true },
};

describe('what is missing', () => {
  it('is everything in a fresh clone', () => {
    write('package-lock.json', WANTED);
    expect(missingPackages(root)).toEqual(['node_modules/zod']);
  });

  it('is a package of another version', () => {
    write('package-lock.json', WANTED);
    write('node_modules/.package-lock.json', { 'node_modules/zod': { version: '3.0.0' } });
    expect(missingPackages(root)).toEqual(['node_modules/zod']);
  });

  it('is nothing once the lockfile is installed, without the packages for other machines', () => {
    write('package-lock.json', WANTED);
    write('node_modules/.package-lock.json', { 'node_modules/zod': { version: '4.0.0' } });
    expect(missingPackages(root)).toEqual([]);
  });
});

describe('the database driver', () => {
  it('is missing where its package lies there without having been compiled', () => {
    const built = path.join(root, 'node_modules', 'better-sqlite3', 'build', 'Release');
    expect(isDriverBuilt(root)).toBe(false);
    mkdirSync(built, { recursive: true });
    expect(isDriverBuilt(root)).toBe(false);
    writeFileSync(path.join(built, 'better_sqlite3.node'), '');
    expect(isDriverBuilt(root)).toBe(true);
  });
});
