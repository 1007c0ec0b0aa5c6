import { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';
import type { PhotoName } from '../files/photo-path';
import { type Connection, statement } from './connection';
import { PRAGMAS } from './verify-pragmas';

/** The files that a database speaks of. */
export interface NamedFiles {
  readonly whole: readonly PhotoName[];
  readonly views: readonly PhotoName[];
  readonly maps: readonly PhotoName[];
}

async function withConnection<Result>(file: string, work: (connection: Connection) => Promise<Result>): Promise<Result> {
  const connection = await new PrismaBetterSQLite3({ url: `file:${file}`, fileMustExist: true }).connect();
  try {
    return await work(connection);
  } finally {
    await connection.dispose();
  }
}

/** Writes all of a database that is in use, also what is still in its side file, as one file of its own. */
export async function snapshotDatabase(file: string, to: string): Promise<void> {
  await withConnection(file, async (connection) => {
    await connection.executeScript(`PRAGMA busy_timeout = ${PRAGMAS.busy_timeout}`);
    await connection.executeRaw(statement('VACUUM INTO ?', to));
  });
}

/** @throws where SQLite finds the file damaged, with what it found */
export async function verifyDatabase(file: string): Promise<void> {
  const { rows } = await withConnection(file, (connection) => connection.queryRaw(statement('PRAGMA integrity_check')));
  if (rows.length !== 1 || rows[0][0] !== 'ok') throw new Error(`The database ${file} is damaged: ${rows.map(([line]) => line).join('; ')}`);
}

/** Every photo, and every picture made of one for people's eyes, that the rows name. */
export async function namedFiles(file: string): Promise<NamedFiles> {
  return withConnection(file, async (connection) => {
    const namesOf = async (sql: string) => (await connection.queryRaw(statement(sql))).rows.map(([episodeId, sha256]) => ({ episodeId: String(episodeId), sha256: String(sha256) }));
    return {
      whole: await namesOf('SELECT DISTINCT episodeId, sha256 FROM Photo'),
      views: await namesOf('SELECT DISTINCT p.episodeId, a.viewSha256 FROM Analysis a JOIN Photo p ON p.id = a.photoId WHERE a.viewSha256 IS NOT NULL'),
      maps: await namesOf('SELECT DISTINCT p.episodeId, a.mapSha256 FROM Analysis a JOIN Photo p ON p.id = a.photoId WHERE a.mapSha256 IS NOT NULL'),
    };
  });
}
