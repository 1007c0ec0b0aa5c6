import { type Connection, statement } from './connection';

/** What SQLite answers when asked, as text. */
export type PragmaSettings = Readonly<Record<string, string>>;

/**
 * FULL, not NORMAL: a check-in that was confirmed survives a power cut. The busy time-out is short because the driver
 * holds up the whole process while it waits; `retryBusy` goes on waiting without that.
 */
export const PRAGMAS: PragmaSettings = { journal_mode: 'wal', synchronous: '2', busy_timeout: '100', foreign_keys: '1' };

/** Sets them on one connection and reads them back. A setting that did not take is an error that names it. */
export async function verifyPragmas(connection: Connection, settings: PragmaSettings): Promise<void> {
  for (const [name, wanted] of Object.entries(settings)) {
    await connection.executeScript(`PRAGMA ${name} = ${wanted}`);
    const { rows } = await connection.queryRaw(statement(`PRAGMA ${name}`));
    const got = String(rows[0]?.[0]);
    if (got !== wanted) {
      throw new Error(`The database's ${name} should be ${wanted} and is ${got}. Does FOLDWATCH_DATA lie on a local disk?`);
    }
  }
}
