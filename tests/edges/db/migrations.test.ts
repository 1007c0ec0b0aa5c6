import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Connection, statement } from '../../../lib/edges/db/connection';
import { migrateDatabase } from '../../../lib/edges/db/migrate-database';
import { ROOT } from '../../architecture/source-tree';
import { MIGRATIONS, type TestDatabase, testDatabase } from './test-database';

let test: TestDatabase;
beforeEach(async () => {
  test = await testDatabase();
});
afterEach(() => test.close());

/** Prisma's own command line: a judge from outside. */
function prisma(...words: string[]) {
  const program = path.join(ROOT, 'node_modules', 'prisma', 'build', 'index.js');
  const config = path.join('prisma', 'prisma.config.ts');
  return spawnSync(process.execPath, [program, ...words, '--config', config], { cwd: ROOT, env: { ...process.env, FOLDWATCH_DATA: test.folder }, encoding: 'utf8' });
}

/** Tables, columns and indices of a database, in an order of their own. */
async function shapeOf(connection: Connection): Promise<string[]> {
  const { rows } = await connection.queryRaw(
    statement(`SELECT 'column ' || t.name || '.' || c.name || ' ' || c.type || ' ' || c."notnull" || ' ' || c.pk FROM sqlite_master t, pragma_table_info(t.name) c WHERE t.type = 'table'
      UNION ALL SELECT 'index ' || t.name || ' ' || i.name || ' ' || i."unique" || ' ' || c.name FROM sqlite_master t, pragma_index_list(t.name) i, pragma_index_info(i.name) c WHERE t.type = 'table'
      UNION ALL SELECT 'reference ' || t.name || '.' || f."from" || ' ' || f."table" || ' ' || f.on_delete FROM sqlite_master t, pragma_foreign_key_list(t.name) f WHERE t.type = 'table'`),
  );
  return rows.map(([line]) => String(line)).filter((line) => !line.includes('_prisma_migrations')).sort();
}

it('has in its migrations what the schema says, no more and no less', async () => {
  const { stdout } = prisma('migrate', 'diff', '--from-empty', '--to-schema-datamodel', path.join('prisma', 'schema.prisma'), '--script');
  const wanted = await new PrismaBetterSQLite3({ url: ':memory:' }).connect();
  await wanted.executeScript(stdout);
  const migrated = await new PrismaBetterSQLite3({ url: `file:${test.file}` }).connect();
  const shape = await shapeOf(migrated);
  expect(shape.filter((line) => line.startsWith('reference')).length).toBeGreaterThan(10);
  expect(shape).toEqual(await shapeOf(wanted));
  await Promise.all([wanted.dispose(), migrated.dispose()]);
});

it('keeps books that Prisma’s command line agrees with', () => {
  const { status, stdout } = prisma('migrate', 'status');
  expect(stdout).toContain('Database schema is up to date');
  expect(status).toBe(0);
});

it('applies each migration once, also when two programs start together', async () => {
  expect(await migrateDatabase(test.file, MIGRATIONS)).toEqual([]);
  const fresh = path.join(test.folder, 'fresh', 'foldwatch.sqlite');
  const applied = await Promise.all([migrateDatabase(fresh, MIGRATIONS), migrateDatabase(fresh, MIGRATIONS)]);
  expect(applied.filter((names) => names.length > 0)).toHaveLength(1);
});

it('refuses a migration that was edited after it was applied', async () => {
  const copy = path.join(test.folder, 'migrations');
  cpSync(MIGRATIONS, copy, { recursive: true });
  const file = path.join(copy, '20261125090000_first', 'migration.sql');
  writeFileSync(file, `${readFileSync(file, 'utf8')}\n-- one more word\n`);
  await expect(migrateDatabase(test.file, copy)).rejects.toThrow(/20261125090000_first was edited after it was applied/);
});

it('leaves nothing of a migration that fails half-way', async () => {
  const copy = path.join(test.folder, 'migrations');
  cpSync(MIGRATIONS, copy, { recursive: true });
  mkdirSync(path.join(copy, '20991231000000_broken'));
  writeFileSync(path.join(copy, '20991231000000_broken', 'migration.sql'), 'CREATE TABLE "Half" ("id" TEXT);\nCREATE NONSENSE;\n');
  await expect(migrateDatabase(test.file, copy)).rejects.toThrow();
  const tables = await test.database.$queryRaw<{ name: string }[]>`SELECT name FROM sqlite_master WHERE name = 'Half'`;
  expect(tables).toEqual([]);
});
