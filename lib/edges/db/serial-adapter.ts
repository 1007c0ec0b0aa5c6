/**
 * One connection, one thing at a time. The adapter that this wraps lets a plain statement slip into whatever transaction
 * is open on its only connection (and be rolled back with it), begins transactions without the write lock, and stays
 * locked for good where that fails. Here a transaction has the connection to itself, begins with the write lock, and a
 * busy database is asked again.
 */
import { type Connection, type ConnectionFactory, type OpenTransaction, statement } from './connection';
import { retryBusy } from './retry-busy';
import { type PragmaSettings, verifyPragmas } from './verify-pragmas';

/** Whoever enters waits for everybody before. */
class Gate {
  #last: Promise<void> = Promise.resolve();

  async enter(): Promise<() => void> {
    const before = this.#last;
    let leave = (): void => undefined;
    this.#last = new Promise((resolve) => (leave = resolve));
    await before;
    return leave;
  }

  async alone<Result>(work: () => Promise<Result>): Promise<Result> {
    const leave = await this.enter();
    try {
      return await work();
    } finally {
      leave();
    }
  }
}

/** Every connection of `factory` opened with these settings, verified, and used by one at a time. */
export function serialAdapter(factory: ConnectionFactory, settings: PragmaSettings, giveUpAfterMs: number): ConnectionFactory {
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    async connect() {
      const connection = await factory.connect();
      await verifyPragmas(connection, settings);
      return oneAtATime(connection, giveUpAfterMs);
    },
  };
}

function oneAtATime(connection: Connection, giveUpAfterMs: number): Connection {
  const gate = new Gate();
  const patiently = <Result>(work: () => Promise<Result>) => retryBusy(work, giveUpAfterMs);
  return {
    provider: connection.provider,
    adapterName: connection.adapterName,
    queryRaw: (query) => gate.alone(() => patiently(() => connection.queryRaw(query))),
    executeRaw: (query) => gate.alone(() => patiently(() => connection.executeRaw(query))),
    executeScript: (script) => gate.alone(() => connection.executeScript(script)),
    async startTransaction() {
      const leave = await gate.enter();
      try {
        await patiently(() => connection.executeRaw(statement('BEGIN IMMEDIATE')));
      } catch (error) {
        leave();
        throw error;
      }
      return transaction(connection, leave);
    },
    dispose: () => gate.alone(() => connection.dispose()),
  };
}

function transaction(connection: Connection, leave: () => void): OpenTransaction {
  const undo = async () => {
    // A full disk has ended the transaction already; then there is nothing to undo.
    await connection.executeRaw(statement('ROLLBACK')).catch(() => undefined);
  };
  return {
    provider: connection.provider,
    adapterName: connection.adapterName,
    // Ours to say COMMIT and ROLLBACK, so that a COMMIT that fails can be undone.
    options: { usePhantomQuery: true },
    queryRaw: (query) => connection.queryRaw(query),
    executeRaw: (query) => connection.executeRaw(query),
    async commit() {
      try {
        await connection.executeRaw(statement('COMMIT'));
      } catch (error) {
        await undo();
        throw error;
      } finally {
        leave();
      }
    },
    async rollback() {
      await undo();
      leave();
    },
  };
}
