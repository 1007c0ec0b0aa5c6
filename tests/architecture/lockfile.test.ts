import { describe, expect, it } from 'vitest';
import { isAtLeast, lockfileBreaches } from './lockfile-rule';
import { readText } from './source-tree';

const lock = (packages: object) => JSON.stringify({ packages });

describe('the rule for the lockfile', () => {
  it('catches a package that says where it was fetched', () => {
    expect(lockfileBreaches(lock({ 'node_modules/zod': { version: '4.0.0', resolved: 'https://a.example/zod.tgz' } }))).toHaveLength(1);
  });

  it('catches a version below the floor, nested ones too', () => {
    expect(lockfileBreaches(lock({ 'node_modules/next': { version: '16.0.6' } }))).toHaveLength(1);
    expect(lockfileBreaches(lock({ 'node_modules/a/node_modules/react': { version: '19.2.0' } }))).toHaveLength(1);
  });

  it('lets versions at the floor, and packages without one, be', () => {
    const packages = { 'node_modules/next': { version: '16.0.7' }, 'node_modules/zod': { version: '1.0.0' } };
    expect(lockfileBreaches(lock(packages))).toEqual([]);
  });

  it('compares numbers as numbers', () => {
    expect(isAtLeast('16.0.10', '16.0.7')).toBe(true);
    expect(isAtLeast('16.1.0', '16.0.7')).toBe(true);
    expect(isAtLeast('15.9.9', '16.0.7')).toBe(false);
    expect(isAtLeast('16.0.7-canary.1', '16.0.7')).toBe(false);
  });
});

describe('the lockfile', () => {
  it('names no host and nothing below a floor', () => {
    expect(lockfileBreaches(readText('package-lock.json'))).toEqual([]);
  });

  it('knows the hosts are left out on purpose', () => {
    expect(readText('.npmrc')).toContain('omit-lockfile-registry-resolved=true');
  });
});
