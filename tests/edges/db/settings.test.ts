import { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { serialAdapter } from '../../../lib/edges/db/serial-adapter';
import { PRAGMAS } from '../../../lib/edges/db/verify-pragmas';
import { MADE_AT, type TestDatabase, testDatabase } from './test-database';

let test: TestDatabase;
beforeEach(async () => {
  test = await testDatabase();
});
afterEach(() => test.close());

const settingsNow = async () =>
  Object.fromEntries(
    await Promise.all(
      Object.keys(PRAGMAS).map(async (name) => [name, String(Object.values((await test.database.$queryRawUnsafe<object[]>(`PRAGMA ${name}`))[0])[0])]),
    ),
  ) as Record<string, string>;

it('writes ahead, waits for others, holds to references and writes through to the disk', async () => {
  expect(await settingsNow()).toEqual({ journal_mode: 'wal', busy_timeout: '100', foreign_keys: '1', synchronous: '2' });
});

it('keeps its settings after a transaction that was undone', async () => {
  await expect(test.database.$transaction(() => Promise.reject(new Error('no')))).rejects.toThrow('no');
  expect(await settingsNow()).toEqual(PRAGMAS);
});

it('refuses a row that belongs to nothing', async () => {
  const orphan = { id: 'a', clinicId: 'nowhere', name: 'A', email: 'a@example.org', role: 'nurse', active: true, madeAt: MADE_AT };
  await expect(test.database.staff.create({ data: orphan })).rejects.toThrow(/Foreign key/);
});

it('says which setting did not take, and where to look', async () => {
  // A database in memory cannot write ahead.
  const inMemory = serialAdapter(new PrismaBetterSQLite3({ url: ':memory:' }), PRAGMAS, 1000);
  await expect(inMemory.connect()).rejects.toThrow(/journal_mode should be wal and is memory.*FOLDWATCH_DATA/);
});

it('does not make a database where there is none: a wrong folder is an error, not an empty clinic', async () => {
  await test.close();
  await expect(test.open()).rejects.toThrow();
});
