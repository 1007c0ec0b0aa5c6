/**
 * Brings a database file to the schema of this program: the SQL that Prisma wrote into `prisma/migrations`, in order,
 * each in one transaction. The bookkeeping is Prisma's own, so its command line agrees; that command line is not needed
 * to start, and neither is a network.
 */
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';
import { type Connection, statement } from './connection';
import { retryBusy } from './retry-busy';

const BOOKKEEPING = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
    "id"                    TEXT PRIMARY KEY NOT NULL,
    "checksum"              TEXT NOT NULL,
    "finished_at"           DATETIME,
    "migration_name"        TEXT NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        DATETIME,
    "started_at"            DATETIME NOT NULL DEFAULT current_timestamp,
    "applied_steps_count"   INTEGER UNSIGNED NOT NULL DEFAULT 0
)`;

const GIVE_UP_AFTER_MS = 30_000;

interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly checksum: string;
}

async function readMigrations(folder: string): Promise<Migration[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map(({ name }) => name).sort();
  return Promise.all(
    names.map(async (name) => {
      const sql = await readFile(path.join(folder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    }),
  );
}

/**
 * Applies what is missing; makes the file where there is none.
 * @returns names of the migrations that were applied now
 * @throws where a migration that was applied has been edited since
 */
export async function migrateDatabase(file: string, folder: string): Promise<string[]> {
  const migrations = await readMigrations(folder);
  await mkdir(path.dirname(file), { recursive: true });
  const connection = await new PrismaBetterSQLite3({ url: `file:${file}` }).connect();
  try {
    await retryBusy(() => connection.executeScript('PRAGMA journal_mode = WAL'), GIVE_UP_AFTER_MS);
    // Two programs may start at once: the second waits here, and then finds nothing left to do.
    await retryBusy(() => connection.executeScript('BEGIN IMMEDIATE'), GIVE_UP_AFTER_MS);
    const applied = await applyMissing(connection, migrations);
    await connection.executeScript('COMMIT');
    return applied;
  } finally {
    // Closing undoes what was not committed.
    await connection.dispose();
  }
}

async function applyMissing(connection: Connection, migrations: readonly Migration[]): Promise<string[]> {
  await connection.executeScript(BOOKKEEPING);
  const { rows } = await connection.queryRaw(statement('SELECT migration_name, checksum FROM _prisma_migrations'));
  const applied = new Map(rows.map(([name, checksum]) => [String(name), String(checksum)]));
  const edited = migrations.find(({ name, checksum }) => applied.has(name) && applied.get(name) !== checksum);
  if (edited) throw new Error(`The migration ${edited.name} was edited after it was applied; a change needs a migration of its own.`);
  const missing = migrations.filter(({ name }) => !applied.has(name));
  for (const { name, sql, checksum } of missing) {
    const now = new Date().toISOString().replace('Z', '+00:00');
    await connection.executeScript(sql);
    await connection.executeRaw(
      statement(
        'INSERT INTO _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count) VALUES (?, ?, ?, ?, ?, 1)',
        ...[randomUUID(), checksum, name, now, now],
      ),
    );
  }
  return missing.map(({ name }) => name);
}
