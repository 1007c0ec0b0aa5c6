/**
 * Another process holds the write lock while this one writes. Whatever is answered as done must be there afterwards;
 * whatever is not done must be an error; and once the lock is gone, everything goes on.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '../../../lib/edges/db/open-database';
import { MADE_AT, type TestDatabase, testClinic, testDatabase } from './test-database';

let test: TestDatabase;
let clinicId: string;
beforeEach(async () => {
  test = await testDatabase();
  clinicId = await testClinic(test.database);
});
afterEach(() => test.close());

/** Resolves when the lock is held; the promise inside it when it has been let go. */
async function holdLock(milliseconds: number): Promise<{ released: Promise<unknown> }> {
  const holder = spawn(process.execPath, [path.join(import.meta.dirname, 'hold-lock.mjs'), test.file, String(milliseconds)]);
  const released = once(holder, 'exit');
  await once(holder.stdout, 'data');
  return { released };
}

const staffRow = (name: string) => ({ id: name, clinicId, name, email: `${name}@example.org`, role: 'nurse', active: true, madeAt: MADE_AT });
const addStaff = (database: Database, name: string) => database.staff.create({ data: staffRow(name) });
const namesIn = async (database: Database) => (await database.staff.findMany({ select: { name: true } })).map(({ name }) => name).sort();

describe('while another process holds the write lock', () => {
  it('lands every write once the lock is gone, by single statements and by transactions', async () => {
    const { released } = await holdLock(2000);
    const names = Array.from({ length: 40 }, (_, at) => `nurse-${String(at).padStart(2, '0')}`);
    await Promise.all(
      names.map((name, at) => (at % 2 === 0 ? addStaff(test.database, name) : test.database.$transaction((queries) => queries.staff.create({ data: staffRow(name) })))),
    );
    await released;
    expect(await namesIn(await test.open())).toEqual(names);
  });

  it('does not hold up the rest of the program while it waits', async () => {
    const { released } = await holdLock(1500);
    const writing = addStaff(test.database, 'patient-writer');
    let ticks = 0;
    const timer = setInterval(() => (ticks += 1), 10);
    await writing;
    clearInterval(timer);
    await released;
    expect(ticks).toBeGreaterThan(10);
  });

  it('says that a write did not happen where the lock stays, and loses neither earlier nor later ones', async () => {
    const hasty = await test.open(300);
    await addStaff(hasty, 'before');
    const { released } = await holdLock(2000);
    const results = await Promise.allSettled([addStaff(hasty, 'during-a'), hasty.$transaction((queries) => queries.staff.create({ data: staffRow('during-b') }))]);
    expect(results.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    await released;
    await addStaff(hasty, 'after-a');
    await hasty.$transaction((queries) => queries.staff.create({ data: staffRow('after-b') }));
    expect(await namesIn(await test.open())).toEqual(['after-a', 'after-b', 'before']);
  });
});

describe('within one process', () => {
  it('keeps a single statement out of a transaction that is undone', async () => {
    const undone = test.database.$transaction(async (queries) => {
      await queries.staff.create({ data: staffRow('undone') });
      await wait(50);
      throw new Error('changed its mind');
    });
    const alongside = addStaff(test.database, 'alongside');
    await expect(undone).rejects.toThrow('changed its mind');
    await alongside;
    expect(await namesIn(await test.open())).toEqual(['alongside']);
  });

  it('goes on after a transaction that broke a rule of the database', async () => {
    await addStaff(test.database, 'one');
    await expect(test.database.$transaction((queries) => queries.staff.create({ data: staffRow('one') }))).rejects.toThrow(/Unique constraint/);
    await addStaff(test.database, 'two');
    expect(await namesIn(test.database)).toEqual(['one', 'two']);
  });

  it('loses nothing between four writers', async () => {
    const writers = await Promise.all(Array.from({ length: 4 }, () => test.open()));
    await Promise.all(writers.flatMap((writer, w) => Array.from({ length: 50 }, (_, at) => addStaff(writer, `writer-${w}-${at}`))));
    expect(await namesIn(test.database)).toHaveLength(200);
  });
});
